/** A chart with its words: canvas as an image, the sentence read aloud, the same numbers as a table. */
import type { Chart, ChartConfiguration } from 'chart.js';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { bold, type FigureTable, type Palette, paletteNames, plain } from '../figures/palette.ts';
import { SaveCsv } from './saveCsv.tsx';
import { Table } from './table.tsx';
import { theme } from './theme.ts';

function palette(): Palette {
  const styles = getComputedStyle(document.documentElement);
  const pairs = paletteNames.map((name) => [name, styles.getPropertyValue(`--${name}`).trim()]);
  return Object.fromEntries(pairs) as Palette;
}

interface FigureProps {
  title: string;
  aloud: string;
  table: FigureTable;
  draw: (palette: Palette) => ChartConfiguration;
  tall?: boolean;
  /** Key and explanation below the drawing. */
  children?: ComponentChildren;
}
export function Figure({ title, aloud, table, draw, tall = false, children }: FigureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const chosen = theme.value;
  useEffect(() => {
    let chart: Chart | undefined;
    let gone = false;
    const dark = matchMedia('(prefers-color-scheme: dark)');
    const paint = async () => {
      const [{ Chart: ChartClass }] = await Promise.all([
        import('../figures/chartKit.ts'),
        document.fonts.load(plain),
        document.fonts.load(bold),
      ]);
      if (gone || !canvas.current) return;
      chart?.destroy();
      chart = new ChartClass(canvas.current, draw(palette()));
      canvas.current.dataset.drawn = 'yes';
    };
    void paint();
    dark.addEventListener('change', paint);
    return () => {
      gone = true;
      dark.removeEventListener('change', paint);
      chart?.destroy();
    };
  }, [draw, chosen]);
  return (
    <figure class="figure">
      <div class={tall ? 'figure-canvas tall' : 'figure-canvas'}>
        <canvas ref={canvas} role="img" aria-label={`${title}. ${aloud}`} />
      </div>
      {children}
      <figcaption>{aloud}</figcaption>
      <details>
        <summary>Read it as a table</summary>
        <Table {...table} caption={title} />
        <SaveCsv title={title} table={table} />
      </details>
    </figure>
  );
}
