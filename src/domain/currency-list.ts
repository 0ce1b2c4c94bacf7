/**
 * The codes of ISO 4217 by how many decimals amounts have, as the standard's list publishes them; `Intl` differs from it for some.
 */
const codesByDecimals: Readonly<Record<number, string>> = {
  0: `BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XAG XAU XBA XBB XBC XBD XDR XOF XPD XPF XPT
    XSU XTS XUA XXX`,
  2: `AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF
    CHE CHF CHW CNY COP COU CRC CUC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ
    GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK
    MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB
    SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN
    UYU UZS VED VES WST XCD YER ZAR ZMW ZWG`,
  3: `BHD IQD JOD KWD LYD OMR TND`,
  4: `CLF UYW`,
};

/** By code, in the order of the codes. */
export const decimalsByCode: ReadonlyMap<string, number> = new Map(
  Object.entries(codesByDecimals)
    .flatMap(([decimals, codes]) => codes.split(/\s+/).map((code) => [code, Number(decimals)] as const))
    .sort(([one], [other]) => (one < other ? -1 : 1)),
);
