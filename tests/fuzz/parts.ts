/** What is fuzzed, and which share of the inputs it gets. */
import { fuzzHttpLine, fuzzMqttLine } from './lines.ts';
import { fuzzDecoders, fuzzMessages, fuzzWeather } from './messages.ts';
import { fuzzRequests } from './requests.ts';

export interface Part {
  name: string;
  share: number;
  /** Rejects with the input that broke it, made as small as it goes. */
  run(inputs: number, seed: number): void | Promise<void>;
}

export const parts: readonly Part[] = [
  { name: 'payloads through the decoders', share: 0.45, run: fuzzDecoders },
  { name: 'answers of a weather service', share: 0.1, run: fuzzWeather },
  { name: 'MQTT messages into a store', share: 0.2, run: fuzzMessages },
  { name: 'requests in an open house', share: 0.13, run: asker('owner') },
  { name: 'requests of whoever was invited', share: 0.03, run: asker('helper') },
  { name: 'requests with the key of a program', share: 0.03, run: asker('reader') },
  { name: 'requests of a stranger', share: 0.04, run: asker('stranger') },
  { name: 'bytes on the port of HTTP', share: 0.01, run: fuzzHttpLine },
  { name: 'bytes on the port of MQTT', share: 0.01, run: fuzzMqttLine },
];

function asker(who: Parameters<typeof fuzzRequests>[2]): Part['run'] {
  return (inputs, seed) => fuzzRequests(inputs, seed, who);
}

export const inputsOf = ({ share }: Part, all: number): number => Math.ceil(share * all);
