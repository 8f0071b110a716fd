/** What grows in the place and how many: asked in the set-up, changed here. */
import { useState } from 'preact/hooks';
import type { Planting } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';
import { changeAndTell, enterAndTell } from '../../entries.ts';
import { Field, issueFor, numberFrom, numberMissing, refusedHere, textMissing } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { offline, placePath, resource } from '../../state.ts';
import { capital } from '../../words/names.ts';

const plantWords = (plants: number) => (plants === 1 ? '1 plant' : `${plants} plants`);

interface PlantingFormProps {
  /** The planting that is changed; otherwise one is added. */
  known?: Planting;
  onKept: () => void;
}
function PlantingForm({ known, onKept }: PlantingFormProps) {
  const [crop, setCrop] = useState(known?.crop ?? '');
  const [plants, setPlants] = useState(known ? String(known.plants) : '');
  const send = async () => {
    const refused = refusedHere(
      textMissing('crop', crop, 'type what grows, such as tomato'),
      numberMissing('plants', plants, 'type how many plants, 1 or more', 0),
    );
    if (refused) return { ok: false as const, refused };
    const data = { crop: crop.trim().toLowerCase(), plants: numberFrom(plants) ?? 0 };
    const words = `${capital(data.crop)}, ${plantWords(data.plants)}`;
    if (known) return changeAndTell('plantings', known.id, { ...known, ...data }, words);
    return enterAndTell<Omit<Planting, 'id'>>('plantings', data, words);
  };
  const kept = () => {
    if (!known) {
      setCrop('');
      setPlants('');
    }
    onKept();
  };
  return (
    <Form onSend={send} onKept={kept} button={known ? 'Keep the change' : 'Keep the plants'}>
      {(refused) => (
        <>
          <Field
            label="What grows"
            value={crop}
            onText={setCrop}
            hint="such as tomato"
            issue={issueFor(refused, 'crop')}
          />
          <Field
            label="How many plants"
            value={plants}
            onText={setPlants}
            inputMode="numeric"
            issue={issueFor(refused, 'plants')}
          />
        </>
      )}
    </Form>
  );
}

function PlantingRow({ planting }: { planting: Planting }) {
  const [open, setOpen] = useState(false);
  return (
    <li class="entry">
      <div class="entry-head">
        <span>
          <strong>{capital(planting.crop)}</strong>
          <span class="note">{plantWords(planting.plants)}</span>
        </span>
        <button
          type="button"
          class="text-button"
          aria-label={`change ${planting.crop}`}
          aria-expanded={open}
          onClick={() => setOpen(!open)}
        >
          change
        </button>
      </div>
      {open && <PlantingForm known={planting} onKept={() => setOpen(false)} />}
    </li>
  );
}

export function Plantings() {
  const plantings = resource<{ records: Recorded<Planting>[] }>(placePath('plantings')).value.data?.records;
  return (
    <Section title="Plants">
      {!plantings && (
        <p class="note">{offline.value ? 'Not on this phone: it needs signal.' : 'Fetching the plants.'}</p>
      )}
      {plantings?.length === 0 && <p class="note">Nothing typed in yet: what grows here?</p>}
      <ul class="entries">
        {plantings?.map(({ id, data }) => (
          <PlantingRow key={id} planting={data} />
        ))}
      </ul>
      <Opening title="Add plants">
        <PlantingForm onKept={() => undefined} />
      </Opening>
    </Section>
  );
}
