/**
 * D05: the cylinder of 16 CFR 1501.4 (part found): 1.25 in across, its slanted floor 1 in to 2.25 in deep; mm. An article
 * that fits wholly in, any way round and not pressed, is a small part. For children under three years (1501.2).
 */
export const smallPartsCylinder = { across: 31.75, shallow: 25.4, deep: 57.15, underMonths: 36 } as const;
