/** What natural enemies cost, against the season before; one in which nothing was bought is told as none. */
import { money } from '../words/numbers.ts';
import { Almanac, Line } from './almanac.tsx';

export interface Spending {
  seasonEnd: string;
  total: number;
  totalToDate: number;
  unpriced: number;
}

interface SpentProps {
  thisSeason: Spending;
  lastSeason: Spending;
  currency: string | undefined;
}
export function Spent({ thisSeason, lastSeason, currency }: SpentProps) {
  const none = lastSeason.total === 0 && lastSeason.unpriced === 0;
  return (
    <Almanac>
      <Line name="This season so far" value={money(thisSeason.totalToDate, currency)} />
      {none && <Line name="Last season" value="none" />}
      {!none && (
        <>
          <Line name="Last season, by the same day" value={money(lastSeason.totalToDate, currency)} />
          <Line name="Last season, whole" value={money(lastSeason.total, currency)} />
        </>
      )}
    </Almanac>
  );
}
