/**
 * Exact conversion factors. Every one is exact by definition, not measured.
 * Source: NIST SP 811 appendix B.8 and the 1959 yard and pound agreement.
 */
export const MM_PER_INCH = 25.4;
export const MM_PER_FOOT = 304.8;
export const M_PER_S_PER_MPH = 0.44704;
export const G_PER_OUNCE = 28.349523125;
export const G_PER_POUND = 453.59237;
export const N_PER_POUND_FORCE = 4.4482216152605;
/** 550 ft·lbf/s. */
export const W_PER_HORSEPOWER = (550 * MM_PER_FOOT * N_PER_POUND_FORCE) / 1000;
/** 1 lbf/in². */
export const PA_PER_PSI = (N_PER_POUND_FORCE * 1e6) / (MM_PER_INCH * MM_PER_INCH);

/** Standard acceleration of free fall, m/s². Source: NIST SP 811, exact. */
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;

export const MM_PER_M = 1000;
export const G_PER_KG = 1000;
export const SECONDS_PER_MINUTE = 60;
