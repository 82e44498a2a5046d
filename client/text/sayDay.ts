/** "25 November 2026" on this device's calendar; what is no date stays as it is written. Takes dates and times in ISO form. */
export function sayDay(iso: string): string {
  const day = dayOf(iso);
  return Number.isNaN(day.getTime()) ? iso : day.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
}

/** The day on this device's calendar, as 2027-04-01. */
export function isoToday(): string {
  const now = new Date();
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`;
}

/** A date without a time is meant on the calendar here, not in Greenwich. */
export const dayOf = (iso: string): Date => new Date(/^\d{4}-\d{2}-\d{2}$/.test(iso) ? `${iso}T00:00:00` : iso);
