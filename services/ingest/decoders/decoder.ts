/** What every decoder takes and gives; tests/contracts/decoderContract.ts is run by each of them. */
import type { Sensor, TemperatureUnit } from '../../model/index.ts';
import type { Refusal } from '../../refusals.ts';

export interface DecodeOptions {
  arrivedMs: number;
  /** Unit of bare numbers: a setting of the sensor. A payload that states its unit is taken at its word. */
  unit: TemperatureUnit;
  pointers?: Sensor['pointers'];
}

export interface DecodedReading {
  /** Missing, never 0, when the probe sent no number. */
  temperatureC?: number;
  humidityPct?: number;
  timeMs: number;
  /** `arrival`: the board named no instant of its own. */
  timeFrom: 'board' | 'arrival';
}

export interface Decoded {
  readings: DecodedReading[];
  /** The payload itself named °C or K, so there is nothing to guess. */
  unitStated: boolean;
  /** What was left out, in words for the page of arrivals. */
  notes: string[];
}

export type Decoder = (text: string, options: DecodeOptions) => Decoded | Refusal;

export function isRefusal(value: object): value is Refusal {
  return 'code' in value && 'reason' in value;
}
