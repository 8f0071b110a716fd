/**
 * Wide tables scroll inside their own frame; the frame takes the focus so that a keyboard can scroll
 * it in every browser (WCAG 2.1.1), and carries a name for whoever lands on it.
 */
export const scrolling = (name: string) => ({ tabIndex: 0, 'aria-label': name });
