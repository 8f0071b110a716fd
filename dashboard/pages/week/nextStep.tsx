/** The one main button: it writes what the person has done; beside it, putting off and other ways. */
import { useState } from 'preact/hooks';
import type { Advice, Order, Release } from '../../../services/model/index.ts';
import { type Recorded, send, type WarningItem } from '../../api.ts';
import { enterAndTell } from '../../entries.ts';
import { notice, tellRefused } from '../../notices.ts';
import { OwnerOnly, ownerEnters } from '../../parts/ownerOnly.tsx';
import { nowMs, placePath, refresh, resource, today } from '../../state.ts';
import { addDays, dayWords } from '../../words/dates.ts';
import { enemyWords } from '../../words/names.ts';
import { unbroken } from '../../words/numbers.ts';
import { onTheWay } from '../releases/onTheWay.ts';

interface Step {
  label: string;
  /** A page to open, or something to write. */
  href?: string;
  run?: () => void;
  /** Who may count and wash may not order. */
  byOwner?: boolean;
}

function orderStep(plan: NonNullable<Advice['plan']>, now: string): Step {
  const { enemy, number, arrivesOn, price } = plan;
  const data = {
    enemy,
    number,
    orderedAt: now,
    ...(arrivesOn && { expectedOn: arrivesOn }),
    ...(price !== undefined && { price }),
  };
  return {
    label: 'I have ordered them',
    byOwner: true,
    run: () => void tell('orders', data, `${number} ${enemyWords[enemy].name} ordered`),
  };
}

function releaseStep(plan: NonNullable<Advice['plan']>, now: string): Step {
  const { enemy, form, number, price } = plan;
  const data = { enemy, form, number, time: now, aliveShare: 1, ...(price !== undefined && { price }) };
  return {
    label: 'I have released them',
    byOwner: true,
    run: () => void tell('releases', data, `${number} ${enemyWords[enemy].name} released`),
  };
}

async function tell(noun: 'orders' | 'releases' | 'treatments', data: object, words: string): Promise<void> {
  const answer = await enterAndTell(noun, data, words);
  if (!answer.ok) tellRefused(answer.refused, `${words}.`);
}

/** The soap that was weighed; what was washed or sprayed otherwise is entered under Releases. */
function washStep(now: string): Step {
  const data = { kind: 'soap', time: now, coveredShare: 0.8 };
  return {
    label: 'I have washed them with soap',
    run: () => void tell('treatments', data, 'Plants washed with soap'),
  };
}

/** What the main button does for a decision; leaving it needs no button. */
export function stepFor({ decision, plan, washFirst }: Advice, nowAt: number): Step | undefined {
  const now = new Date(nowAt).toISOString();
  if (decision === 'leave') return undefined;
  if (decision === 'wash' || (decision === 'wait' && washFirst)) return washStep(now);
  if (decision === 'wait' || !plan) return { label: 'Count now', href: '/round' };
  const toOrder = decision === 'order' || (decision === 'top-up' && plan.orderBy !== undefined);
  return toOrder ? orderStep(plan, now) : releaseStep(plan, now);
}

async function putOff(open: readonly WarningItem[], days: number, until: string): Promise<void> {
  for (const { id } of open) {
    await send({ method: 'POST', path: placePath(`warnings/${id}/put-off`), body: { days } });
  }
  refresh(/\/warnings/);
  notice.value = { kind: 'kept', lead: 'Put off', text: `until ${until}. The sentence stays as it is.` };
}

/** The friend of the plan is ordered already: a second parcel is rarely what is meant. */
function useParcel(plan: Advice['plan']) {
  const orders = resource<{ records: Recorded<Order>[] }>(placePath('orders')).value.data?.records ?? [];
  const releases =
    resource<{ records: Recorded<Release>[] }>(placePath('releases')).value.data?.records ?? [];
  return onTheWay(orders, releases).find(({ data }) => data.enemy === plan?.enemy)?.data;
}

function ParcelNote({ order }: { order: Order }) {
  const due = order.expectedOn ? `, due ${dayWords(order.expectedOn)}` : '';
  return (
    <p class="parcel-note">
      <strong>On the way:</strong> {unbroken(`${order.number} ${enemyWords[order.enemy].name}${due}.`)}{' '}
      <a href="/releases">The parcel</a>
    </p>
  );
}

const button = ({ label, run }: Step) => (
  <button type="button" class="main-button" onClick={run}>
    {label}
  </button>
);

export function NextStep({ advice }: { advice: Advice }) {
  const [putting, setPutting] = useState(false);
  const warnings = resource<{ warnings: WarningItem[] }>(placePath('warnings')).value.data?.warnings ?? [];
  const open = warnings.filter((each) => each.state === 'open');
  const parcel = useParcel(advice.plan);
  const toOrder = advice.plan?.orderBy !== undefined && advice.decision !== 'release';
  const step = parcel && toOrder ? undefined : stepFor(advice, nowMs.value);
  // Of an order with a wash before it either may be done first.
  const wash = toOrder && advice.washFirst ? washStep(new Date(nowMs.value).toISOString()) : undefined;
  return (
    <div class="next-step">
      {parcel && <ParcelNote order={parcel} />}
      {step?.href && (
        <a class="main-button" href={step.href}>
          {step.label}
        </a>
      )}
      {step?.run && (step.byOwner ? <OwnerOnly line={ownerEnters}>{button(step)}</OwnerOnly> : button(step))}
      <div class="beside-button">
        {wash && (
          <button type="button" class="text-button" onClick={wash.run}>
            {wash.label}
          </button>
        )}
        {open.length > 0 && (
          <OwnerOnly>
            <button
              type="button"
              class="text-button"
              aria-expanded={putting}
              onClick={() => setPutting(!putting)}
            >
              Put off
            </button>
          </OwnerOnly>
        )}
        <a class="text-button" href="#other-ways">
          Other ways
        </a>
      </div>
      {putting && (
        <fieldset class="keys">
          <legend>Remind me again in</legend>
          {[1, 3, 7].map((days) => (
            <button
              type="button"
              class="key"
              key={days}
              onClick={() => {
                setPutting(false);
                void putOff(open, days, dayWords(addDays(today.value, days)));
              }}
            >
              {days === 1 ? '1 day' : `${days} days`}
            </button>
          ))}
        </fieldset>
      )}
    </div>
  );
}
