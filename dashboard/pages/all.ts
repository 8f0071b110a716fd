/** All pages but this week's, by their address. They are one file that comes after the first load (`others.ts`). */
import type { ComponentType } from 'preact';
import { Ahead } from './ahead.tsx';
import { HouseBook } from './houseBook.tsx';
import { People } from './people.tsx';
import { Phone } from './phone.tsx';
import { Releases } from './releases.tsx';
import { Round } from './round.tsx';
import { SeasonPage } from './season.tsx';
import { Sensors } from './sensors.tsx';
import { Settings } from './settings.tsx';
import { SetUp } from './setUp.tsx';
import { Shopping } from './shopping.tsx';
import { Telling } from './telling.tsx';
import { Well } from './well.tsx';
import { AllPictures, WhoIsIt } from './whoIsIt.tsx';

export type Pages = Readonly<Record<string, { title: string; page: ComponentType }>>;

export const pages: Pages = {
  '/round': { title: 'The round', page: Round },
  '/ahead': { title: 'What is coming', page: Ahead },
  '/releases': { title: 'Releases and orders', page: Releases },
  '/season': { title: 'The season', page: SeasonPage },
  '/shopping': { title: 'Shopping list', page: Shopping },
  '/sensors': { title: 'Sensors', page: Sensors },
  '/who-is-it': { title: 'Who is it?', page: WhoIsIt },
  '/who-is-it/pictures': { title: 'All pictures', page: AllPictures },
  '/phone': { title: 'Kept on this phone', page: Phone },
  '/settings': { title: 'Settings', page: Settings },
  '/people': { title: 'People and boards', page: People },
  '/well': { title: 'Is all well?', page: Well },
  '/telling': { title: 'How you are told', page: Telling },
  '/book': { title: 'House book', page: HouseBook },
  '/new-place': { title: 'A new place', page: SetUp },
};
