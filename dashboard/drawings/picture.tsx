/** A picture with its size bar; the words of the bar stand below it, so that they grow with the text. */
import { drawings } from './all.tsx';

interface PictureProps {
  id: string;
  /** Shape, colour, size and place. */
  alt: string;
}
export function Picture({ id, alt }: PictureProps) {
  const drawing = drawings[id];
  if (!drawing) return null;
  const { mm, unitsPerMm, Drawn, Bar } = drawing;
  return (
    <figure class="plate-picture">
      <svg viewBox="0 0 240 240" role="img" aria-label={alt}>
        <Drawn />
        <Bar mm={mm} unitsPerMm={unitsPerMm} />
      </svg>
      <figcaption>{mm} mm</figcaption>
    </figure>
  );
}

/** The picture as a hint beside words that say it all. */
export function Hint({ id }: { id: string }) {
  const Drawn = drawings[id]?.Drawn;
  return (
    <svg class="hint" viewBox="0 0 240 220" aria-hidden="true">
      {Drawn && <Drawn />}
    </svg>
  );
}
