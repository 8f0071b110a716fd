import type { Database } from 'better-sqlite3';
import type { Advice, Forecast } from '../model/index.ts';
import type { Issued, IssuedForecast } from './store.ts';

const dayMs = 86_400_000;

interface Row {
  placeId: string;
  asOfMs: number;
  forecast: string;
  advice: string;
}

/** Forecasts as issued, thinned to those that differ in what they knew of the counts. */
export function openIssued(db: Database): Issued {
  const select = 'select place as placeId, asOfMs, forecast, advice from issued where place = ?';
  const insert = db.prepare('insert or replace into issued values (@placeId, @asOfMs, @forecast, @advice)');
  const latest = db.prepare<[string], Row>(`${select} order by asOfMs desc limit 1`);
  const list = db.prepare<[string], Row>(`${select} order by asOfMs`);
  const times = db
    .prepare<[string], number>('select asOfMs from issued where place = ? order by asOfMs')
    .pluck();
  const at = db.prepare<[string, number], Row>(`${select} and asOfMs = ?`);
  const dropSuperseded = db.prepare(`
    delete from issued
    where place = @placeId and asOfMs >= @dayStartMs and asOfMs < @asOfMs
      and not exists (select 1 from record
        where record.place = issued.place and changedAtMs > issued.asOfMs and changedAtMs <= @asOfMs)`);

  const keep = db.transaction(({ placeId, asOfMs, forecast, advice }: IssuedForecast) => {
    dropSuperseded.run({ placeId, asOfMs, dayStartMs: Math.floor(asOfMs / dayMs) * dayMs });
    insert.run({ placeId, asOfMs, forecast: JSON.stringify(forecast), advice: JSON.stringify(advice) });
  });

  return {
    keep: (issued) => keep(issued),
    latest(placeId) {
      const row = latest.get(placeId);
      return row && issuedOf(row);
    },
    list: (placeId) => list.all(placeId).map(issuedOf),
    times: (placeId) => times.all(placeId),
    at(placeId, asOfMs) {
      const row = at.get(placeId, asOfMs);
      return row && issuedOf(row);
    },
  };
}

function issuedOf({ placeId, asOfMs, forecast, advice }: Row): IssuedForecast {
  return {
    placeId,
    asOfMs,
    forecast: JSON.parse(forecast) as Forecast,
    advice: JSON.parse(advice) as Advice,
  };
}
