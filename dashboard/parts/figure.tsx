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
    const paper = matchMedia('print');
    let ChartClass: typeof Chart | undefined;
    /** At once: paper does not wait. There the drawing has twice the points. */
    const repaint = () => {
      if (!ChartClass || !canvas.current) return;
      chart?.destroy();
      const drawing = draw(palette());
      if (paper.matches) drawing.options = { ...drawing.options, devicePixelRatio: 2 };
      chart = new ChartClass(canvas.current, drawing);
      canvas.current.dataset.drawn = 'yes';
    };
    const paint = async () => {
      const [kit] = await Promise.all([
        import('../figures/chartKit.ts'),
        document.fonts.load(plain),
        document.fonts.load(bold),
      ]);
      if (gone) return;
      ChartClass = kit.Chart;
      repaint();
    };
    void paint();
    dark.addEventListener('change', repaint);
    paper.addEventListener('change', repaint);
    return () => {
      gone = true;
      dark.removeEventListener('change', repaint);
      paper.removeEventListener('change', repaint);
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
