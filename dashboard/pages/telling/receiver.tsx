/** One receiver: how it stands, with a trial and a way out. */
import { Line } from '../../parts/almanac.tsx';
import { stateWords, type TargetState, tryOut } from './answer.ts';

interface ReceiverProps {
  name: string;
  state: TargetState | undefined;
  onTakeAway: () => void;
}
export function Receiver({ name, state, onTakeAway }: ReceiverProps) {
  const attempt = state && (() => void tryOut({ channel: state.channel, to: state.to }));
  return (
    <Line
      name={name}
      value=""
      note={state && stateWords(state)}
      action={
        <span class="line-actions">
          {attempt && (
            <button type="button" class="text-button" aria-label={`try it: ${name}`} onClick={attempt}>
              try it
            </button>
          )}
          <button type="button" class="text-button" aria-label={`take away: ${name}`} onClick={onTakeAway}>
            take away
          </button>
        </span>
      }
    />
  );
}
