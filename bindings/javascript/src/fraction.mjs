// SPDX-License-Identifier: Apache-2.0
// Exact numbers.

function divisor(a, b) {
    let [x, y] = [a < 0n ? -a : a, b];
    while (y !== 0n) [x, y] = [y, x % y];
    return x;
}

function whole(value, what) {
    if (typeof value === "bigint") return value;
    if (Number.isSafeInteger(value)) return BigInt(value);
    if (typeof value === "number") {
        throw new TypeError(
            `${what} is a binary float (${value}), which is seldom the number that was read; give text, ` +
                "a whole number, a BigInt or a Fraction",
        );
    }
    throw new TypeError(`${what} is a whole number or a BigInt`);
}

/**
 * num / den in lowest terms, den above zero; both are BigInt. Immutable. `String(fraction)` is "1 7/8", and so it is in
 * JSON. Comparisons with < and sums with + would go through a binary float, so they throw.
 */
export class Fraction {
    constructor(num, den = 1n) {
        const [above, below] = [whole(num, "num"), whole(den, "den")];
        if (below === 0n) throw new RangeError("a denominator is not zero");
        const shared = divisor(above, below < 0n ? -below : below) * (below < 0n ? -1n : 1n);
        this.num = above / shared;
        this.den = below / shared;
        Object.freeze(this);
    }

    /** Of a Fraction, an object of two BigInt num and den, a BigInt or a whole number. */
    static of(value, what = "a number") {
        if (value instanceof Fraction) return value;
        if (typeof value?.num === "bigint" && typeof value.den === "bigint") return new Fraction(value.num, value.den);
        return new Fraction(whole(value, what));
    }

    add(other) {
        const { num, den } = Fraction.of(other);
        return new Fraction(this.num * den + num * this.den, this.den * den);
    }

    subtract(other) {
        const { num, den } = Fraction.of(other);
        return new Fraction(this.num * den - num * this.den, this.den * den);
    }

    multiply(other) {
        const { num, den } = Fraction.of(other);
        return new Fraction(this.num * num, this.den * den);
    }

    divide(other) {
        const { num, den } = Fraction.of(other);
        return new Fraction(this.num * den, this.den * num);
    }

    /** -1, 0 or 1 as it is below, equal to or above the other. */
    compare(other) {
        const difference = this.subtract(other).num;
        return difference < 0n ? -1 : Number(difference > 0n);
    }

    equals(other) {
        return this.compare(other) === 0;
    }

    /** The nearest binary float, for a drawing. Nothing is judged by it. */
    toNumber() {
        const [above, below] = [this.num / this.den, this.num % this.den];
        return Number(above) + Number(below) / Number(this.den);
    }

    toString() {
        const size = this.num < 0n ? -this.num : this.num;
        const [above, below] = [size / this.den, size % this.den];
        const part = below === 0n ? "" : `${below}/${this.den}`;
        return (this.num < 0n ? "-" : "") + [above === 0n && part !== "" ? "" : above, part].join(" ").trim();
    }

    toJSON() {
        return this.toString();
    }

    [Symbol.toPrimitive](hint) {
        if (hint === "string") return this.toString();
        throw new TypeError("a Fraction is compared by compare() and computed with by add(); toNumber() rounds");
    }
}

const DECIMALS = 9;

/**
 * The text of an exact number for a reader. It has decimal digits where at most nine of them are enough: an exact
 * number has no lost blank, and is no fraction of a tape. Others stay fractions, and are refused as their texts would
 * be.
 */
export function numberText(value, name, point = ".") {
    const { num, den } = Fraction.of(value, name);
    if (den === 1n) return String(num);
    let [digits, power] = [0, 1n];
    for (; power % den !== 0n && digits < DECIMALS; digits++) power *= 10n;
    if (num < 0n || power % den !== 0n) return `${num}/${den}`;
    return `${num / den}${point}${String((num % den) * (power / den)).padStart(digits, "0")}`;
}
