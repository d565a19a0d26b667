// The words of the page, all from the bundle of the program.
let words = {};

export async function readWords() {
  const answer = await fetch('words');
  words = await answer.json();
  document.documentElement.lang = words.language;
}

// A text with {0}, {1} filled in; {0:1} is a number with one decimal.
export function say(key, ...values) {
  const text = words[`mat.${key}`] ?? key;
  return text.replace(/\{(\d)(?::(\d))?\}/g, (all, place, decimals) => {
    const value = values[Number(place)];
    return decimals === undefined ? value : number(value, Number(decimals));
  });
}

// With a capital, where a text stands by itself.
export function sentence(text) {
  return text.charAt(0).toLocaleUpperCase(words.language) + text.slice(1);
}

export function number(value, decimals) {
  return new Intl.NumberFormat(words.language, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  }).format(value).replace('-', '\u2212');
}
