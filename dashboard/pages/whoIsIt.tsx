/** The key from question to meaning, and all pictures on one page. */
import { keyStep } from '../../services/model/index.ts';
import '../styles/whoIsIt.css';
import { Picture } from '../drawings/picture.tsx';
import { PageHead, Section } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { useStepFocus } from '../parts/stepFocus.ts';
import { go } from '../router.ts';
import { altOf, answers, chosen, ofSide, open } from './whoIsIt/answers.ts';
import { Meaning, Unknown } from './whoIsIt/meaning.tsx';
import { Plates } from './whoIsIt/plates.tsx';
import { Answered, Question, stepWords } from './whoIsIt/question.tsx';

export function WhoIsIt() {
  const step = keyStep(answers.value);
  const picked = chosen.value;
  useStepFocus(`${answers.value.length} ${picked === 'none' ? 'none' : (picked?.id ?? '')}`);
  return (
    <Shell>
      <div class="who">
        <div class="who-head">
          <span>Who is it?</span>
          {!picked && <span class="note">{stepWords()}</span>}
        </div>
        <Answered />
        {!picked && 'ask' in step && <Question ask={step.ask} options={step.options} />}
        {!picked && !('ask' in step) && <Plates left={step.left} />}
        {picked === 'none' && <Unknown left={step.left} />}
        {picked && picked !== 'none' && <Meaning kind={picked} />}
        {answers.value.length === 0 && !picked && (
          <p class="who-all">
            <a href="/who-is-it/pictures">All pictures</a>
          </p>
        )}
      </div>
    </Shell>
  );
}

const shelves = [
  { side: 'friend', title: 'Friends' },
  { side: 'pest', title: 'Pests, and the ants that guard them' },
  { side: 'neither', title: 'Neither' },
] as const;

export function AllPictures() {
  return (
    <Shell>
      <div class="who">
        <PageHead
          sentence="All pictures, each with its size"
          note="The bar below each picture has the length it says. Choose one to read what it means."
        />
        {shelves.map(({ side, title }) => (
          <Section key={side} title={title}>
            <ul class="gallery">
              {ofSide(side).map((kind) => (
                <li key={kind.id}>
                  <button
                    type="button"
                    class="gallery-plate"
                    onClick={() => {
                      go('/who-is-it');
                      open(kind);
                    }}
                  >
                    <Picture id={kind.id} alt={altOf(kind)} />
                    <span>{kind.name}</span>
                  </button>
                </li>
              ))}
            </ul>
          </Section>
        ))}
      </div>
    </Shell>
  );
}
