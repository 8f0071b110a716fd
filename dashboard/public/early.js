// Runs while the script of the page is still on its way: the first date that a browser writes, and the first week that
// it is asked for, cost a slow phone a quarter of a second, whichever they are.
new Intl.DateTimeFormat(navigator.language, { dateStyle: 'long' }).formatToParts();
new Intl.Locale(navigator.language).getWeekInfo?.();
