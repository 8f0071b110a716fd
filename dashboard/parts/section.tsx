/** A part of a page, opened by a glazing bar. */
import type { ComponentChildren } from 'preact';

interface SectionProps {
  title: string;
  id?: string;
  /** Stands beside the title, such as a measured value. */
  beside?: string | undefined;
  children: ComponentChildren;
}
export function Section({ title, id, beside, children }: SectionProps) {
  return (
    <section class="section" {...(id && { id })} aria-label={title}>
      <div class="section-head">
        <h2>{title}</h2>
        {beside && <span class="section-beside">{beside}</span>}
      </div>
      {children}
    </section>
  );
}

/** The head of every page but the first: name of the page, place, sentence. */
export function PageHead({ sentence, note }: { sentence: string; note?: ComponentChildren }) {
  return (
    <header class="page-head">
      <h1 tabIndex={-1}>{sentence}</h1>
      {note && <p class="note">{note}</p>}
    </header>
  );
}
