/** What the API needs from the other rooms, handed in by the wiring. */
import type { FastifyServerFactory } from 'fastify';
import type { Access } from '../access/door.ts';
import type { Clock } from '../clock.ts';
import type { Watch } from '../metrics/watch.ts';
import type { Season, Sensor, TemperatureCurve } from '../model/index.ts';
import type { IssuedForecast, Store, Target, TellingSettings } from '../store/store.ts';
import type { Changes } from './changes.ts';

export interface ApiDeps {
  store: Store;
  clock: Clock;
  changes: Changes;
  /** A forecast that knows everything entered so far. */
  forecastNow(placeId: string): Promise<IssuedForecast>;
  /** Reads quarantined messages again, after a mapping or a unit was mended. */
  reread(ids: number[], unit?: Sensor['unit']): Promise<{ mended: number; stillRefused: number }>;
  season: {
    /** As the forecast uses it; undefined where nothing was ever measured. */
    temperature(
      store: Store,
      placeId: string,
      stretch: { fromMs: number; toMs: number },
    ): Promise<TemperatureCurve | undefined>;
    /** What a forecast at an instant is computed from. */
    asRead(store: Store, placeId: string, asOfMs: number): Promise<Season>;
    /** The text of the season file, piece by piece. */
    text(store: Store, placeId: string): AsyncIterable<string>;
    /** All readings as CSV, piece by piece. */
    csv(store: Store, placeId: string): AsyncIterable<string>;
    import(store: Store, season: Season, options: { replace: boolean; atMs: number }): Promise<void>;
    /** JSON Schema of the season file. */
    jsonSchema(): object;
  };
  /** Sentences for the owner about what does not work just now; empty when all is well. */
  troubles(): string[];
  access: Access;
  watch: Watch;
  telling: {
    settings(placeId: string): TellingSettings;
    canMail: boolean;
    pushPublicKey: string;
    /** Sends a trial at once; answers what went wrong, if anything. */
    tryOut(placeId: string, target: Target): Promise<string | undefined>;
    /** Publishes advice and warnings again; false while the broker is away. */
    tryMqtt(placeId: string): Promise<boolean>;
    /** The calendar of a place as text/calendar. */
    feed(placeId: string): string | undefined;
  };
  /** The forecast of the air outdoors. */
  outdoor: {
    now(placeId: string): Promise<unknown>;
    afresh(placeId: string): void;
    troubleOf(placeId: string): string | undefined;
  };
  demo: boolean;
  /** Browsers send the session over TLS only. */
  secure: boolean;
  /** Addresses of proxies that are believed about who asked them; left out, nobody is. */
  proxies?: string[];
  /** Makes the server that is listened on; left out, plain HTTP. */
  createServer?: FastifyServerFactory;
  version: string;
  /** Folder of the built dashboard; left out, only the API is served. */
  dashboardDir?: string;
  log: 'info' | 'silent';
  /** Where the log goes; left out, to stderr. */
  logStream?: { write(line: string): void };
}
