/** The page's sentence with its verb on yellow; dates and counts never break inside. */
import { unbroken } from '../words/numbers.ts';

interface SentenceProps {
  sentence: string;
  verb: string;
  /** Out of date: a new entry is being worked in. */
  waiting?: boolean;
}
export function Sentence({ sentence, verb, waiting = false }: SentenceProps) {
  const found = verb !== '' && sentence.toLowerCase().startsWith(verb.toLowerCase());
  const [lead, rest] = found ? [sentence.slice(0, verb.length), sentence.slice(verb.length)] : ['', sentence];
  return (
    <h1 class={waiting ? 'sentence waiting' : 'sentence'} aria-busy={waiting} tabIndex={-1}>
      {lead && <span class="verb">{lead}</span>}
      {unbroken(rest)}
    </h1>
  );
}
