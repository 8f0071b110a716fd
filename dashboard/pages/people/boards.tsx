/** Names and passwords of boards: each may publish on its own topics and on no other's. */
import { useState } from 'preact/hooks';
import type { Place, Sensor } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';
import { Almanac, Line } from '../../parts/almanac.tsx';
import { Choice } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { placePath, resource } from '../../state.ts';
import { type Credential, CredentialLine, MadeOnce, make } from './credentials.tsx';

const whole = '';

export function Boards({ all, shown }: { all: readonly Credential[]; shown: Place }) {
  const [sensorId, setSensorId] = useState(whole);
  const sensors =
    resource<{ records: Recorded<Sensor>[] }>(placePath('sensors')).value.data?.records.map(
      ({ data }) => data,
    ) ?? [];
  const nameOf = (id: string) => sensors.find((each) => each.id === id)?.name ?? id;
  const onSend = () =>
    make({
      kind: 'device',
      placeId: shown.id,
      name: sensorId === whole ? `Gateway of ${shown.name}` : nameOf(sensorId),
      ...(sensorId !== whole && { sensorId }),
    });
  const options = [
    ...sensors.map(({ id, name }) => ({ value: id, label: name })),
    { value: whole, label: `a gateway for all of ${shown.name}` },
  ];
  return (
    <Section title="Boards">
      <p>A board signs in at the broker with a name and a password of its own.</p>
      <Almanac>
        {all
          .filter(({ kind }) => kind === 'device')
          .map((each) => (
            <CredentialLine key={each.id} credential={each} note={`signs in as ${each.user}`} />
          ))}
      </Almanac>
      <MadeOnce kind="device">
        {({ credential, secret }) => (
          <>
            <p>
              Set these in <strong>{credential.name}</strong>:
            </p>
            <Almanac>
              <Line name="Name" value={credential.user ?? ''} />
            </Almanac>
            <p>Password</p>
            <code class="secret">{secret}</code>
          </>
        )}
      </MadeOnce>
      <Opening title="A password for a board">
        <Form onSend={onSend} button="Make a password">
          {() => <Choice label="Speaks for" value={sensorId} options={options} onChoose={setSensorId} />}
        </Form>
      </Opening>
    </Section>
  );
}
