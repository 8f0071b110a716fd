/** Figures of counts on a phone: none hides a disc, another figure or words. */
import { expect, it } from 'vitest';
import { figurePlaces } from '../../dashboard/figures/figurePlaces.ts';

const area = { left: 0, right: 300, top: 0, bottom: 200 };
const widthOf = (text: string) => 8 * text.length;
const disc = (x: number, y: number, text: string, aside = false) => ({ x, y, text, aside });
const placesOf = (discs: ReturnType<typeof disc>[], taken: (typeof area)[] = []) =>
  figurePlaces(discs, { taken, area, widthOf });

it('stands above its disc, left of one that something stands through', () => {
  expect(placesOf([disc(100, 100, '14')])[0]).toEqual({ x: 100, y: 84 });
  expect(placesOf([disc(100, 100, '14', true)])[0]?.x).toBeLessThan(90);
});

it('makes way for words, for other discs and for newer figures, and is left out where there is no room', () => {
  const limit = { left: 80, right: 160, top: 76, bottom: 92 };
  const beside = placesOf([disc(100, 100, '34')], [limit])[0];
  expect(beside && beside.y > 92).toBe(true);
  const steep = placesOf([disc(100, 150, '15'), disc(102, 132, '58')]);
  expect(steep[1]).toEqual({ x: 102, y: 116 });
  expect(steep[0]?.y).not.toBe(134);
  expect(placesOf([disc(100, 100, '34')], [area])).toEqual([undefined]);
});

it('a figure on the axis never runs into the labels below', () => {
  const roof = { left: 0, right: 300, top: 170, bottom: 194 };
  expect(placesOf([disc(100, 200, '0')], [roof])).toEqual([undefined]);
});
