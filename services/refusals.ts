/**
 * The one catalogue of refusals, for messages (quarantine) and for HTTP. docs/errors.md repeats it
 * and a test holds both equal. `whatToDo` is a sentence for the person.
 */
export const refusals = {
  'topic-unknown-place': {
    status: 404,
    whatToDo: 'Set up this place first, or correct the place in the topic.',
  },
  'topic-unknown': {
    status: 404,
    whatToDo: 'Publish on glasstide/<place>/readings/<sensor>, or map this topic to a sensor.',
  },
  'payload-too-large': { status: 413, whatToDo: 'Send at most 64 kB in one message, 1 MB in one request.' },
  'payload-unreadable': { status: 400, whatToDo: 'Send a plain number, a JSON object or SenML.' },
  'value-missing': {
    status: 400,
    whatToDo: 'Send a temperature; a dead value such as nan is not a reading.',
  },
  'value-not-finite': { status: 400, whatToDo: 'Check the probe and its wires: it sent no number.' },
  'unit-unknown': {
    status: 400,
    whatToDo: 'Send Cel or K in SenML. For °F send a number or JSON, and choose °F for the sensor.',
  },
  'unit-doubtful': {
    status: 422,
    whatToDo: 'Say whether this sensor speaks °F; its values are kept and not used until then.',
  },
  'time-implausible': {
    status: 400,
    whatToDo: 'Set the clock of the board, or leave the time out: arrival time is used then.',
  },
  'retained-without-time': {
    status: 400,
    whatToDo: 'Publish readings without the retained flag, or with their own time.',
  },
  'count-before-trap': {
    status: 422,
    whatToDo: 'That trap had not been hung yet: choose the trap, or mend the date.',
  },
  'date-ahead': {
    status: 422,
    whatToDo: 'Look at the year and the month: an entry tells what has happened.',
  },
  'forecast-unreadable': {
    status: 422,
    whatToDo: 'Look at the address, the paths and the unit under Settings, The weather ahead.',
  },
  'record-invalid': { status: 400, whatToDo: 'Correct what is named here, then try again.' },
  'record-unknown': { status: 404, whatToDo: 'It may have been deleted; look in its history.' },
  'place-exists': { status: 409, whatToDo: 'Choose another id, or import with replace.' },
  'reference-unknown': { status: 422, whatToDo: 'Name a trap, sensor or planting of this place.' },
  'idempotency-key-missing': { status: 400, whatToDo: 'Send a header Idempotency-Key with every write.' },
  'idempotency-key-reused': {
    status: 422,
    whatToDo: 'Make a new key for each new entry; use one again only to send the same entry again.',
  },
  'host-unknown': { status: 421, whatToDo: 'Open the address that was printed when the service started.' },
  'page-foreign': {
    status: 403,
    whatToDo: 'Open the dashboard at its own address; other pages may not write here.',
  },
  'sign-in-needed': {
    status: 401,
    whatToDo: 'Type the passphrase, open an invitation, or send a key as Authorization: Bearer.',
  },
  'not-allowed': { status: 403, whatToDo: 'Ask the owner of the house, or mend the entry instead.' },
  'passphrase-wrong': {
    status: 403,
    whatToDo: 'Try again. Lost? On the machine itself, npm run -s passphrase chooses a new one.',
  },
  'invitation-unknown': { status: 410, whatToDo: 'Ask the owner of the house for a new invitation.' },
  'too-many-requests': { status: 429, whatToDo: 'Wait a minute, then try again.' },
  'route-unknown': { status: 404, whatToDo: 'See the API page for the routes.' },
  fault: { status: 500, whatToDo: 'Nothing was lost. Try again; if it stays, report it with its code.' },
} as const satisfies Record<string, { status: number; whatToDo: string }>;

export type RefusalCode = keyof typeof refusals;

/** A refusal as data: what was found, where, and what was expected. */
export interface Refusal {
  code: RefusalCode;
  /** One or two sentences: what happened and what became of it. */
  reason: string;
  issues?: { path: string; expected: string; received: string }[];
}

export class RefusalError extends Error {
  readonly refusal: Refusal;
  constructor(refusal: Refusal) {
    super(refusal.reason);
    this.refusal = refusal;
  }
}
