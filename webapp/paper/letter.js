/** Whether letter paper is what is sold where she is (from memory), by the language of her browser. */
export const onLetter = /^(en-US|en-CA|es-MX|fr-CA)/i.test(navigator.language);
