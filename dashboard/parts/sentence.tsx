/** The page's sentence with its verb on yellow; dates and counts never break inside. */
import { unbroken } from '../words/numbers.ts';

export function Sentence({ sentence, verb }: { sentence: string; verb: string }) {
  const found = verb !== '' && sentence.toLowerCase().startsWith(verb.toLowerCase());
  const [lead, rest] = found ? [sentence.slice(0, verb.length), sentence.slice(verb.length)] : ['', sentence];
  return (
    <h1 class="sentence" tabIndex={-1}>
      {lead && <span class="verb">{lead}</span>}
      {unbroken(rest)}
    </h1>
  );
}
