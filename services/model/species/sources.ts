/** Papers cited in more than one species record, and the words for values that have none. */
export const commonPractice = 'common practice, no source';
export const judgement = 'judgement';
export const fromMemory = 'from memory, paper not seen';

export const osborne1982 =
  'Osborne LS 1982. Temperature-dependent development of greenhouse whitefly and its parasite Encarsia formosa. Environmental Entomology 11:483-485';
export const madueke1984 =
  'Madueke EDN, Coaker TH 1984. Temperature requirements of the white fly Trialeurodes vaporariorum and its parasitoid Encarsia formosa. Entomologia Generalis 9:149-154. doi 10.1127/entom.gen/9/1984/149';
export const deVis2002 =
  'de Vis RMJ, van Lenteren JC 2002. Journal of Applied Entomology. doi 10.1046/j.1439-0418.2002.00591.x';
export const satar2008 =
  'Satar S, Kersting U, Uygun N 2008. Population parameters of Aphis gossypii and Myzus persicae on pepper. Journal of Plant Diseases and Protection 115:69-74. doi 10.1007/bf03356241';
export const barlow1962 =
  'Barlow CA 1962. The influence of temperature on the growth of experimental populations of Myzus persicae and Macrosiphum euphorbiae. Canadian Journal of Zoology 40:145-156';
export const deConti2010 =
  'De Conti BF, Bueno VHP, Sampaio MV, Sidney LA 2010. Reproduction and fertility life table of three aphid species (Macrosiphini) at different temperatures. Revista Brasileira de Entomologia 54:654-660';
export const qassim =
  'Life history of Amblyseius swirskii and Neoseiulus cucumeris on the date palm mite Oligonychus afrasiaticus. Brazilian Journal of Biology (authors not seen)';
export const wyss1999 =
  'Wyss E, Villiger M, Hemptinne JL, Müller-Schärer H 1999. Effects of augmentative releases of eggs and larvae of the ladybird beetle Adalia bipunctata on the abundance of the rosy apple aphid. Entomologia Experimentalis et Applicata 90:167-173';
export const ferrero2010 =
  'Ferrero M, Gigot C, Tixier MS, van Houten YM, Kreiter S 2010. Egg hatching response to a range of air humidities for six species of predatory mites. Entomologia Experimentalis et Applicata 135:237-244. doi 10.1111/j.1570-7458.2010.00992.x';

/** Appended to the study a line of development belongs to: who computed or collected the line. */
export const inJarosik =
  '; line computed by Jarosik V, Honek A, Magarey RD, Skuhrovec J 2011, Journal of Economic Entomology 104:1870-1876, doi 10.1603/EC11247';
export const inNietschke =
  '; line in the database of Nietschke BS, Magarey RD, Borchert DM, Calvin DD, Jones E 2007, Crop Protection 26:1444-1448';
/** Appended to the study of a functional response: who refitted it. */
export const inForage =
  '; refitted in the FoRAGE database, DeLong J, Uiterwaal S 2018, version 4 of 2023, doi 10.5063/F17H1GTQ';
