/** Names as growers say them. The species records hold the rest; the page needs only these. */
import type { EnemyId, LeafKind, PestId, TrapKind, TreatmentKind } from '../../services/model/index.ts';

export const pestNames: Record<PestId, string> = {
  'trialeurodes-vaporariorum': 'whitefly',
  'myzus-persicae': 'peach aphids',
  'aphis-gossypii': 'melon aphids',
};

/** `whitefly passes`, `peach aphids pass`. */
export const pestPasses = (pest: PestId): string =>
  `${pestNames[pest]} ${pestNames[pest].endsWith('s') ? 'pass' : 'passes'}`;

interface EnemyWords {
  name: string;
  /** Of a single one. */
  one: string;
  /** Stage as sold, as the species record has it. */
  form: string;
}
export const enemyWords: Record<EnemyId, EnemyWords> = {
  'amblyseius-swirskii': { name: 'swirskii mites', one: 'swirskii mite', form: 'mixed stages in sachets' },
  'phytoseiulus-persimilis': {
    name: 'persimilis mites',
    one: 'persimilis mite',
    form: 'adults and nymphs in a tube',
  },
  'neoseiulus-cucumeris': { name: 'cucumeris mites', one: 'cucumeris mite', form: 'mixed stages in sachets' },
  'encarsia-formosa': { name: 'Encarsia', one: 'Encarsia', form: 'pupa on card' },
  'aphidius-colemani': { name: 'Aphidius', one: 'Aphidius', form: 'mummies in a tube' },
  'adalia-bipunctata': { name: 'ladybirds', one: 'ladybird', form: 'larvae' },
  'chrysoperla-carnea': { name: 'lacewings', one: 'lacewing', form: 'larvae' },
};

/** `120 Encarsia`, `1 ladybird`. */
export const animals = (n: number, enemy: EnemyId): string =>
  `${n} ${n === 1 ? enemyWords[enemy].one : enemyWords[enemy].name}`;

export const trapKindNames: Record<TrapKind, string> = {
  whitefly: 'Whitefly',
  aphid: 'Winged aphids',
  thrips: 'Thrips',
  'small-wasp': 'Small wasps',
  unknown: 'Not known',
};

const trapKindOne: Record<TrapKind, string> = {
  whitefly: 'whitefly',
  aphid: 'winged aphid',
  thrips: 'thrips',
  'small-wasp': 'small wasp',
  unknown: 'not known',
};

/** `14 whitefly`, `1 winged aphid`. */
export const trapCatch = (n: number, kind: TrapKind): string =>
  `${n} ${n === 1 ? trapKindOne[kind] : trapKindNames[kind].toLowerCase()}`;

export const leafKindWords: Record<LeafKind, { name: string; look: string; friend: boolean }> = {
  'whitefly-adult': { name: 'Whitefly', look: 'white, winged, flies up', friend: false },
  'whitefly-scale': { name: 'Whitefly scales', look: 'pale, flat, oval', friend: false },
  'black-scale': { name: 'Black scales', look: 'a friend at work', friend: true },
  aphid: { name: 'Aphids', look: 'pear shape, two pipes', friend: false },
  mummy: { name: 'Mummies', look: 'swollen, papery', friend: true },
  'spider-mite': { name: 'Spider mite', look: 'tiny, slow, fine webs', friend: false },
  thrips: { name: 'Thrips', look: 'thin, runs along the veins', friend: false },
  'predatory-mite': { name: 'Predatory mites', look: 'pear shape, runs', friend: true },
  'ladybird-larva': { name: 'Ladybird larvae', look: 'dark, long, six legs', friend: true },
  'lacewing-larva': { name: 'Lacewing larvae', look: 'curved jaws, tapering', friend: true },
};

export const treatmentNames: Record<TreatmentKind, string> = {
  'water-jet': 'Washed with water',
  soap: 'Soap',
  oil: 'Oil',
  neem: 'Neem',
  pyrethrins: 'Pyrethrins',
  sulphur: 'Sulphur',
  'other-spray': 'Another spray',
};

/** A species id from outside as a name; an id we do not know yet stays readable. */
export const speciesName = (id: string): string =>
  pestNames[id as PestId] ?? enemyWords[id as EnemyId]?.name ?? id.replaceAll('-', ' ');

const scaleNames: Record<string, string> = {
  N1: 'crawler and first scale (N1)',
  N2: 'young scale (N2)',
  N3: 'young scale (N3)',
  'N4/pupa': 'old scale (N4, pupa)',
};

/** A stage as growers see it on the leaf; the record's own word where there is no other. */
export const stageName = (species: string, stage: string): string =>
  (species === 'trialeurodes-vaporariorum' ? scaleNames[stage] : undefined) ?? stage;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
