/** One question: pictures where the outline is asked, words with every answer, and a way out of each. */
import {
  characters,
  type KeyAnswer,
  type KeyOption,
  mostQuestions,
  notSure,
} from '../../../services/model/index.ts';
import { Hint } from '../../drawings/picture.tsx';
import { Almanac, Line } from '../../parts/almanac.tsx';
import { capital } from '../../words/names.ts';
import { answer, answers, back, backTo } from './answers.ts';

const wordsOf = ({ character, value }: KeyAnswer): string => {
  const values: Record<string, string> = characters[character].values;
  return value === notSure ? 'not sure' : (values[value] ?? value);
};

/** What was answered so far, each with a way to change it. */
export function Answered() {
  if (answers.value.length === 0) return null;
  return (
    <Almanac>
      {answers.value.map((given, i) => {
        const { name } = characters[given.character];
        return (
          <Line
            key={given.character}
            name={name}
            value={wordsOf(given)}
            action={
              <button
                type="button"
                class="text-button"
                aria-label={`change ${name}`}
                onClick={() => backTo(i)}
              >
                change
              </button>
            }
          />
        );
      })}
    </Almanac>
  );
}

interface QuestionProps {
  ask: KeyAnswer['character'];
  options: readonly KeyOption[];
}
export function Question({ ask, options }: QuestionProps) {
  const { question, how, values } = characters[ask];
  const words: Record<string, string> = values;
  const pictured = ask === 'form' || ask === 'opening' || ask === 'setting';
  return (
    <>
      <h1 tabIndex={-1}>{question}</h1>
      <p class="note">{how}</p>
      <ul class={pictured ? 'answers pictured' : 'answers'}>
        {options.map(({ value, kinds: [first] }) => (
          <li key={value}>
            <button type="button" class="key answer" onClick={() => answer({ character: ask, value })}>
              {pictured && first && <Hint id={first.id} />}
              <span>{capital(words[value] ?? value)}</span>
            </button>
          </li>
        ))}
      </ul>
      <div class="thumb-bar">
        {answers.value.length > 0 && (
          <button type="button" class="text-button" onClick={back}>
            Back
          </button>
        )}
        <button type="button" class="key not-sure" onClick={() => answer({ character: ask, value: notSure })}>
          Not sure
        </button>
      </div>
    </>
  );
}

export const stepWords = (): string => `question ${answers.value.length + 1} of at most ${mostQuestions + 1}`;
