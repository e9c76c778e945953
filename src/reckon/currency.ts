/** Currencies without a minor unit, or with three or four decimals. Source: ISO 4217:2015, list one, from memory. */
const DECIMALS: Readonly<Record<string, number>> = {
  ...Object.fromEntries(
    'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'.split(' ').map((code) => [code, 0]),
  ),
  ...Object.fromEntries('BHD IQD JOD KWD LYD OMR TND'.split(' ').map((code) => [code, 3])),
  CLF: 4,
  UYW: 4,
};

/** Decimals of a currency's minor unit (GBP 2, JPY 0); two while the currency is not named. */
export const currencyDecimals = (currency: string | undefined): number => DECIMALS[currency ?? ''] ?? 2;
