/** Where one screen takes the place of another on the same page, the reader stands at the heading of the new one. */
import { useLayoutEffect, useRef } from 'preact/hooks';

/** `step` names the screen. A field that the screen itself has put the cursor in keeps it. */
export function useStepFocus(step: string): void {
  const first = useRef(true);
  useLayoutEffect(() => {
    if (!first.current) {
      scrollTo(0, 0);
      const isTyping = document.activeElement instanceof HTMLInputElement;
      if (!isTyping) document.querySelector<HTMLElement>('main h1')?.focus({ preventScroll: true });
    }
    first.current = false;
  }, [step]);
}
