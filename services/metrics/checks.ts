/** Whether all is well, point by point, as sentences for the owner. Pure: facts in, sentences out. */

/** What is known just now, from wherever it is known. */
export interface Facts {
  nowMs: number;
  locked: boolean;
  places: readonly {
    id: string;
    name: string;
    forecastAtMs?: number;
    sensors: readonly { id: string; name: string; lastMs?: number }[];
  }[];
  /** Messages in quarantine that nobody has looked at. */
  waiting: number;
  turnedAway: { total: number; latest: readonly { atMs: number; user: string; why: string }[] };
  /** Undefined when no daily copy is set up. */
  backup?: { lastAtMs?: number; copies: number; trouble?: string } | undefined;
  /** Undefined where it cannot be told. */
  disk?: { freeBytes: number } | undefined;
  troubles: readonly string[];
}

export interface Check {
  id: string;
  title: string;
  /** `unsure`: nothing is wrong, and something could be better. */
  state: 'well' | 'unsure' | 'unwell';
  says: string;
}

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;
/** A day of silence is most often a flat battery (as the warning has it); common practice, no source. */
const silentMs = dayMs;
/** A forecast is made each morning. */
const oldForecastMs = 30 * hourMs;
const oldBackupMs = 50 * hourMs;
/** A year of eight sensors at one reading a minute takes about 140 MB. */
const littleDiskBytes = 200_000_000;

export function checksOf(facts: Facts): Check[] {
  return [
    runs(facts),
    ...facts.places.map((place) => forecast(place, facts.nowMs)),
    ...facts.places.flatMap((place) =>
      place.sensors.map((sensor) => sensorCheck(place, sensor, facts.nowMs)),
    ),
    refused(facts),
    turnedAway(facts),
    lock(facts),
    backup(facts),
    ...disk(facts),
  ];
}

function runs({ troubles }: Facts): Check {
  const well = troubles.length === 0;
  return check('runs', 'The service', well, well ? 'Everything runs.' : troubles.join(' '));
}

function forecast({ id, name, forecastAtMs }: Facts['places'][number], nowMs: number): Check {
  const title = `Forecast of ${name}`;
  if (forecastAtMs === undefined) {
    return { id: `forecast-${id}`, title, state: 'unsure', says: 'None yet: it follows the first entry.' };
  }
  const well = nowMs - forecastAtMs < oldForecastMs;
  return check(`forecast-${id}`, title, well, `Made ${ago(nowMs - forecastAtMs)}.`);
}

function sensorCheck(
  place: { id: string; name: string },
  { id, name, lastMs }: Facts['places'][number]['sensors'][number],
  nowMs: number,
): Check {
  const named = { id: `sensor-${place.id}-${id}`, title: `Sensor ${name}, ${place.name}` };
  if (lastMs === undefined) return { ...named, state: 'unsure', says: 'Has not spoken yet.' };
  const silence = nowMs - lastMs;
  return silence < silentMs
    ? { ...named, state: 'well', says: `Last read ${ago(silence)}.` }
    : { ...named, state: 'unwell', says: `Silent: last read ${ago(silence)}. Look at its battery.` };
}

function refused({ waiting }: Facts): Check {
  const says =
    waiting === 0
      ? 'No message waits to be mended.'
      : `${many(waiting, 'message')} could not be used: the page Sensors says why.`;
  return { id: 'refused', title: 'Messages', state: waiting === 0 ? 'well' : 'unsure', says };
}

const whyWords: Record<string, string> = {
  'sign-in': 'its name or password is not known',
  name: 'another board has its client name',
  publish: 'it spoke on a topic that is not its own',
  subscribe: 'it wanted to hear what is not for boards',
};

function turnedAway({ turnedAway: { total, latest }, nowMs }: Facts): Check {
  const last = latest[0];
  const named = { id: 'turned-away', title: 'Boards at the door' };
  if (!last) return { ...named, state: 'well', says: 'None was turned away since the start.' };
  const who = last.user === '' ? 'one without a name' : last.user;
  const says = `${total} times turned away; the last ${ago(nowMs - last.atMs)}, ${who}: ${whyWords[last.why] ?? last.why}.`;
  return { ...named, state: 'unsure', says };
}

function lock({ locked }: Facts): Check {
  const says = locked
    ? 'A passphrase is chosen.'
    : 'No passphrase yet: only this machine is answered, and everybody on it may do everything.';
  return { id: 'lock', title: 'The lock', state: locked ? 'well' : 'unsure', says };
}

function backup({ backup: state, nowMs }: Facts): Check {
  const named = { id: 'backup', title: 'Copies' };
  if (!state)
    return {
      ...named,
      state: 'unsure',
      says: 'No daily copy is set up: whoever runs glasstide names a folder for it.',
    };
  if (state.trouble !== undefined) return { ...named, state: 'unwell', says: state.trouble };
  if (state.lastAtMs === undefined)
    return { ...named, state: 'unsure', says: 'The first one is made tonight.' };
  const age = nowMs - state.lastAtMs;
  return check('backup', 'Copies', age < oldBackupMs, `The last of ${state.copies} was made ${ago(age)}.`);
}

function disk({ disk: space }: Facts): Check[] {
  if (!space) return [];
  const well = space.freeBytes >= littleDiskBytes;
  const free = `${(space.freeBytes / 1e9).toFixed(1)} GB are free.`;
  return [check('disk', 'The disk', well, well ? free : `${free} Make room, or readings cannot be kept.`)];
}

const check = (id: string, title: string, well: boolean, says: string): Check => ({
  id,
  title,
  state: well ? 'well' : 'unwell',
  says,
});

const many = (n: number, noun: string) => (n === 1 ? `1 ${noun}` : `${n} ${noun}s`);

/** `just now`, `12 minutes ago`, `1 hour ago`, `3 days ago`; a clock that ran ahead counts as now. */
export function ago(ms: number): string {
  const minutes = Math.floor(ms / 60_000);
  if (minutes < 2) return 'just now';
  if (minutes < 60) return `${minutes} minutes ago`;
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? `${many(hours, 'hour')} ago` : `${Math.floor(hours / 24)} days ago`;
}
