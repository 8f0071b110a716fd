/** Is all well? One sentence, then each point with what is known of it. */
import { PageHead, Section } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { resource } from '../state.ts';
import { unbroken } from '../words/numbers.ts';

interface Check {
  id: string;
  title: string;
  state: 'well' | 'unsure' | 'unwell';
  says: string;
}

function sentenceOf(checks: readonly Check[]): string {
  const amiss = checks.filter(({ state }) => state === 'unwell');
  const unsure = checks.filter(({ state }) => state === 'unsure');
  if (amiss.length === 1) return 'One thing is not well.';
  if (amiss.length > 1) return `${amiss.length} things are not well.`;
  if (unsure.length === 0) return 'All is well.';
  return unsure.length === 1
    ? 'All is well, with one thing to know.'
    : `All is well, with ${unsure.length} things to know.`;
}

const parts: readonly { state: Check['state']; title: string }[] = [
  { state: 'unwell', title: 'Not well' },
  { state: 'unsure', title: 'To know' },
  { state: 'well', title: 'Well' },
];

export function Well() {
  const { data, refused } = resource<{ checks: Check[] }>('/api/checks').value;
  if (!data) {
    return (
      <Shell>
        <PageHead
          sentence={refused ? refused.reason : 'Looking after everything.'}
          note={refused?.whatToDo}
        />
      </Shell>
    );
  }
  return (
    <Shell>
      <PageHead sentence={sentenceOf(data.checks)} />
      {parts.map(({ state, title }) => {
        const checks = data.checks.filter((check) => check.state === state);
        if (checks.length === 0) return null;
        return (
          <Section key={state} title={title}>
            <dl class="checks">
              {checks.map((check) => (
                <div key={check.id}>
                  <dt>{check.title}</dt>
                  <dd>{unbroken(check.says)}</dd>
                </div>
              ))}
            </dl>
          </Section>
        );
      })}
    </Shell>
  );
}
