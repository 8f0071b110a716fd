/** Settings: places, plants, traps, limits, supplier, days away, a copy of everything, light or dark. */
import { OwnerOnly, ownerKeeps } from '../parts/ownerOnly.tsx';
import { PageHead, Section } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { place } from '../state.ts';
import { AwayDays } from './settings/away.tsx';
import { Copies } from './settings/copies.tsx';
import { Limits } from './settings/limits.tsx';
import { Places } from './settings/places.tsx';
import { Plantings } from './settings/plantings.tsx';
import { SupplierPart } from './settings/supplier.tsx';
import { Traps } from './settings/traps.tsx';
import { Units } from './settings/units.tsx';
import { Weather } from './settings/weather.tsx';

export function Settings() {
  const shown = place.value;
  return (
    <Shell>
      <PageHead sentence="Settings" note="Everything can be changed and undone." />
      <div class="two-columns">
        <Places />
        <OwnerOnly line={ownerKeeps}>
          <Plantings />
          <Traps />
          {shown && <Limits key={`limits ${shown.id}`} shown={shown} />}
          {shown && <SupplierPart key={`supplier ${shown.id}`} shown={shown} />}
          {shown && <AwayDays key={`away ${shown.id}`} shown={shown} />}
          {shown && <Weather key={`weather ${shown.id}`} />}
        </OwnerOnly>
        <Section title="How you are told">
          <p>Warnings by mail, phone and calendar; quiet hours and the weekly letter.</p>
          <a class="key wide-key" href="/telling">
            How you are told
          </a>
        </Section>
        <Copies />
        <Section title="People and boards">
          <p>Who may come in, and how far: the passphrase, invitations, and a password for each board.</p>
          <a class="key wide-key" href="/people">
            People and boards
          </a>
        </Section>
        <Section title="Is all well?">
          <p>The service, its sensors, copies and room on the disk, point by point.</p>
          <a class="key wide-key" href="/well">
            Look after everything
          </a>
        </Section>
        <Units />
      </div>
    </Shell>
  );
}
