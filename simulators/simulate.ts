/**
 * Plays a scenario against a running service:
 * node dist/simulators/simulate.js --scenario NAME --seed 1 --mqtt mqtt://127.0.0.1:1883 --http http://127.0.0.1:8080
 */
import { parseArgs } from 'node:util';
import { play } from './play.ts';
import { scenarioByName, scenarios } from './scenarios.ts';
import { connectSpeaker } from './speak.ts';

const { values } = parseArgs({
  options: {
    scenario: { type: 'string', default: 'spring-whitefly' },
    seed: { type: 'string', default: '1' },
    mqtt: { type: 'string', default: 'mqtt://127.0.0.1:1883' },
    http: { type: 'string', default: 'http://127.0.0.1:8080' },
    list: { type: 'boolean', default: false },
  },
});

if (values.list) {
  for (const { name, about } of scenarios) process.stdout.write(`${name}: ${about}\n`);
} else {
  await simulate(values.scenario, Number(values.seed), values.mqtt, values.http);
}

async function simulate(name: string, seed: number, mqttUrl: string, httpUrl: string) {
  if (!Number.isInteger(seed)) throw new Error('Send --seed as a whole number, such as 1.');
  const scenario = scenarioByName(name);
  const placeId = scenario.place.id;
  const speaker = await connectSpeaker({ mqttUrl, httpUrl, placeId, writer: `${name}-${seed}` });
  const untilMs = Date.parse(scenario.presentAt);
  const events = play(scenario, seed);
  let month = '';
  for (let next = events.next(); !next.done && next.value.atMs <= untilMs; ) {
    const now = new Date(next.value.atMs).toISOString().slice(0, 7);
    if (now !== month) process.stderr.write(`Playing ${now}\n`);
    month = now;
    next = events.next(await speaker.deliver(next.value));
  }
  await speaker.close();
  process.stdout.write(`Played ${name} until ${scenario.presentAt}: ${httpUrl}\n`);
}
