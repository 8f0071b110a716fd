/** People and boards: who may come in, and how far. */
import { access } from '../access.ts';
import { PageHead } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { place, resource } from '../state.ts';
import { Boards } from './people/boards.tsx';
import type { CredentialsAnswer } from './people/credentials.tsx';
import { Passphrase } from './people/passphrase.tsx';
import { Persons } from './people/persons.tsx';
import { Programs } from './people/programs.tsx';

function Owners() {
  const { data } = resource<CredentialsAnswer>('/api/access/credentials').value;
  const all = data?.credentials ?? [];
  return (
    <>
      <Persons all={all} />
      {place.value && <Boards all={all} shown={place.value} />}
      <Programs all={all} />
    </>
  );
}

const sentences = {
  open: 'The house has no lock yet: only its own machine may come in.',
  owner: 'The house is locked, and you have the key.',
  helper: 'You may look and count here.',
};

export function People() {
  const { passphrase = false, you = 'helper' } = access.value ?? {};
  const owner = you === 'owner';
  const sentence = passphrase ? sentences[owner ? 'owner' : 'helper'] : sentences.open;
  const note = passphrase
    ? undefined
    : 'Choose a passphrase, and phones, boards and a second person can be let in one by one.';
  return (
    <Shell>
      <PageHead sentence={sentence} note={note} />
      <Passphrase chosen={passphrase} owner={owner} />
      {passphrase && owner && <Owners />}
    </Shell>
  );
}
