const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/** "5 April 2027" of 2027-04-05; what is no such day stays as it is written. The same on every device. */
export function sayDate(iso: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso) ?? [];
  const name = months[Number(month) - 1];
  const days = new Date(Date.UTC(Number(year), Number(month), 0)).getUTCDate();
  return name === undefined || Number(day) < 1 || Number(day) > days ? iso : `${Number(day)} ${name} ${Number(year)}`;
}
