/** Phones that are told, and whether this one can be. */
import { send } from '../../api.ts';
import { notice } from '../../notices.ts';
import { Almanac } from '../../parts/almanac.tsx';
import { Section } from '../../parts/section.tsx';
import { placePath } from '../../state.ts';
import { thisBrowser } from '../unlock.tsx';
import { type TellingAnswer, told } from './answer.ts';
import { Receiver } from './receiver.tsx';

const canBeTold = () =>
  isSecureContext && 'serviceWorker' in navigator && 'PushManager' in window && 'Notification' in window;

/** Asks the browser for its agreement and tells the house where to send. */
async function tellThisPhone(publicKey: string): Promise<void> {
  const declined = (text: string) => {
    notice.value = { kind: 'refused', lead: 'Not yet:', text };
  };
  if ((await Notification.requestPermission()) !== 'granted') {
    return declined('this browser keeps messages off: allow them in its settings, then try again.');
  }
  try {
    const worker = await navigator.serviceWorker.ready;
    const subscription = await worker.pushManager.subscribe({
      userVisibleOnly: true,
      applicationServerKey: publicKey,
    });
    const { endpoint, keys } = subscription.toJSON();
    const body = { endpoint, keys, name: thisBrowser() };
    const answer = await send({ method: 'POST', path: placePath('telling/phones'), body });
    told(answer, 'this phone is told from now on. Try it.');
  } catch {
    declined('the browser could not reach its push service. Try again with signal.');
  }
}

export function Phones({ answer }: { answer: TellingAnswer }) {
  const { phones, targets, pushPublicKey } = answer;
  const takeAway = async (id: string, name: string) =>
    told(
      await send({ method: 'DELETE', path: placePath(`telling/phones/${id}`) }),
      `${name} is told no longer.`,
    );
  return (
    <Section title="Phones">
      {phones.length === 0 && <p>No phone is told.</p>}
      <Almanac>
        {phones.map(({ id, name }) => (
          <Receiver
            key={id}
            name={name}
            state={targets.find((each) => each.channel === 'push' && each.to === id)}
            onTakeAway={() => void takeAway(id, name)}
          />
        ))}
      </Almanac>
      {canBeTold() ? (
        <button type="button" class="key wide-key" onClick={() => void tellThisPhone(pushPublicKey)}>
          Tell this phone
        </button>
      ) : (
        <p class="note">
          This browser cannot be told here: that needs https, or the machine glasstide runs on. On an iPhone,
          first put the page on the home screen.
        </p>
      )}
      <p class="note">
        The words are sealed for the phone; the push service of its maker sees only that something came.
      </p>
    </Section>
  );
}
