/** Who is it? The pictures come with the page, not with the first load of the dashboard. */
import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { Shell } from '../parts/shell.tsx';

type Pages = Record<'Key' | 'Pictures', ComponentType>;
const pages = signal<Pages | undefined>(undefined);
const missing = signal(false);

function fetchPages(): void {
  import('./whoIsIt/page.tsx').then(
    (found) => {
      pages.value = found;
    },
    () => {
      missing.value = true;
    },
  );
}

function Fetched({ name }: { name: keyof Pages }) {
  const Page = pages.value?.[name];
  if (!Page) fetchPages();
  const words = missing.value
    ? 'The pictures did not come. Open this page again with signal.'
    : 'Fetching the pictures.';
  return <Shell>{Page ? <Page /> : <p class="note">{words}</p>}</Shell>;
}

export const WhoIsIt = () => <Fetched name="Key" />;
export const AllPictures = () => <Fetched name="Pictures" />;
