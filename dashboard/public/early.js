// Runs while the script of the page is still on its way: a browser that writes its first date, and tells its first day of
// the week, loads all it knows of languages, which takes a slow phone a quarter of a second.
new Intl.DateTimeFormat(navigator.language, { dateStyle: 'long' }).formatToParts();
new Intl.Locale(navigator.language).getWeekInfo?.();
