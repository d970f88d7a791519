using System.Globalization;
using System.Numerics;
using CsCheck;
using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;

namespace PlankFit.Tests.Reading.Lengths;

/// <summary>Random lengths against exact rational arithmetic in whole numbers, and what is written read back.</summary>
public class LengthProperties
{
    private static readonly Gen<bool> AnyBool = Gen.Bool;

    /// <summary>The double nearest to numerator/denominator, found with whole numbers only.</summary>
    private static void IsNearest(BigInteger numerator, BigInteger denominator, double read)
    {
        BigInteger Off(double candidate)
        {
            // candidate = m * 2^e exactly; compare |m 2^e - n/d| scaled by d * 2^1074.
            long bits = BitConverter.DoubleToInt64Bits(Math.Abs(candidate));
            int exponent = (int)(bits >> 52);
            BigInteger mantissa = bits & 0xFFFFFFFFFFFFF;
            if (exponent > 0)
            {
                mantissa += BigInteger.One << 52;
                exponent--;
            }

            BigInteger scaled = (mantissa << exponent) * (candidate < 0 ? -1 : 1);
            return BigInteger.Abs((scaled * denominator) - (numerator << 1074));
        }

        BigInteger off = Off(read);
        Assert.True(off <= Off(Math.BitIncrement(read)), "the next double up is nearer");
        Assert.True(off <= Off(Math.BitDecrement(read)), "the next double down is nearer");
    }

    [Fact]
    public void FeetInchesEighthsAreExact() =>
        Gen.Select(Gen.Int[0, 900], Gen.Int[0, 11], Gen.Int[0, 7], Gen.Int[0, 5], AnyBool)
            .Sample(
                (feet, inches, eighths, ending, negative) =>
                {
                    (string text, int quarters) = new[]
                    {
                        ("", 0),
                        ("+", 2),
                        ("-", -2),
                        (" 1/4", 1),
                        ("½", 2),
                        (" 3/4", 3),
                    }[ending];
                    BigInteger thirtySeconds =
                        ((((feet * 12) + inches) * 8) + eighths) * 4 + quarters;
                    if (thirtySeconds < 0)
                    {
                        return;
                    }

                    string written =
                        (negative ? "-" : "")
                        + string.Create(
                            CultureInfo.InvariantCulture,
                            $"{feet}-{inches:00}-{eighths}{text}"
                        );
                    LengthReading reading = LengthNotation.ReadCell(
                        written,
                        LengthUnit.FeetInchesEighths
                    );
                    Assert.True(reading.Ok, written + " " + reading.Fault);
                    IsNearest(thirtySeconds * 254 * (negative ? -1 : 1), 320, reading.Mm);
                },
                iter: 20_000
            );

    [Fact]
    public void DecimalsWithAnyUnitAreExact() =>
        Gen.Select(Gen.Int[0, 99_999], Gen.Int[0, 9_999], Gen.Int[1, 4], Gen.Int[0, 4], AnyBool)
            .Sample(
                (whole, part, places, unit, space) =>
                {
                    (string name, int tenthsOfMm) = new[]
                    {
                        ("mm", 10),
                        ("cm", 100),
                        ("m", 10_000),
                        ("in", 254),
                        ("ft", 3048),
                    }[unit];
                    var scale = BigInteger.Pow(10, places);
                    BigInteger fraction = part % scale;
                    BigInteger numerator = (whole * scale) + fraction;
                    if (numerator * tenthsOfMm > scale * 10_000_000)
                    {
                        return;
                    }

                    string written =
                        whole.ToString(CultureInfo.InvariantCulture)
                        + "."
                        + fraction.ToString(CultureInfo.InvariantCulture).PadLeft(places, '0')
                        + (space ? " " : "")
                        + name;
                    LengthReading reading = LengthNotation.Read(written, LengthUnit.Metre);
                    Assert.True(reading.Ok, written + " " + reading.Fault);
                    IsNearest(numerator * tenthsOfMm, scale * 10, reading.Mm);
                },
                iter: 20_000
            );

    [Fact]
    public void FeetAndInchesWithFractionsAreExact() =>
        Gen.Select(Gen.Int[0, 900], Gen.Int[0, 11], Gen.Int[1, 6], Gen.Int[0, 63], AnyBool)
            .Sample(
                (feet, inches, power, parts, dash) =>
                {
                    int denominator = 1 << power;
                    int over = parts % denominator;
                    string fraction =
                        over == 0
                            ? ""
                            : string.Create(CultureInfo.InvariantCulture, $" {over}/{denominator}");
                    string written = string.Create(
                        CultureInfo.InvariantCulture,
                        $"{feet}'{(dash ? "-" : " ")}{inches}{fraction}\""
                    );
                    LengthReading reading = LengthNotation.Read(written, LengthUnit.Millimetre);
                    Assert.True(reading.Ok, written + " " + reading.Fault);
                    BigInteger n = (BigInteger)((feet * 12) + inches) * denominator + over;
                    IsNearest(n * 254, denominator * 10, reading.Mm);
                },
                iter: 20_000
            );

    /// <summary>What is put on paper, read back, is within half a step of the length; rounded up, never shorter by more than a thousandth.</summary>
    [Fact]
    public void WhatIsWrittenIsReadBack() =>
        Gen.Select(Gen.Double[-20_000, 20_000], Gen.Enum<LengthUnit>(), AnyBool)
            .Sample(
                (mm, unit, up) =>
                {
                    RoundTo mode = up ? RoundTo.Up : RoundTo.Nearest;
                    string paper = LengthText.ForPaper(mm, unit, mode);
                    double step = unit
                        is LengthUnit.Millimetre
                            or LengthUnit.Centimetre
                            or LengthUnit.Metre
                        ? 0.5
                        : 25.4 / 32;
                    double back = Back(paper, unit);
                    double most = up ? step : step / 2;
                    Assert.InRange(back - mm, up ? -0.001001 : -most - 1e-9, most + 1e-9);
                    Assert.Equal(LengthText.OnPaperMm(mm, unit, mode), back, 1e-9);

                    // Written once more it is the same: paper lengths are fixed points.
                    Assert.Equal(paper, LengthText.ForPaper(back, unit, mode));
                    double exact = Back(LengthText.FormatExact(mm, unit), unit);
                    Assert.InRange(
                        Math.Abs(exact - mm),
                        0,
                        (LengthUnits.IsMetric(unit) ? 0.05 : step / 2) + 1e-9
                    );
                },
                iter: 50_000
            );

    private static double Back(string text, LengthUnit unit)
    {
        LengthReading reading = LengthNotation.Read(text, unit);
        Assert.True(reading.Ok, $"{text}: {reading.Fault}");
        return reading.Mm;
    }

    /// <summary>Any text at all gives a finite length or a fault.</summary>
    [Fact]
    public void AnyTextIsALengthOrAFault() =>
        Gen.Select(
                Gen.Char["0123456789-+ ./'\"mcinft½¾′″,xeN"].Array[0, 14],
                Gen.Enum<LengthUnit>(),
                AnyBool
            )
            .Sample(
                (chars, unit, cell) =>
                {
                    string text = new(chars);
                    LengthReading reading = cell
                        ? LengthNotation.ReadCell(text, unit)
                        : LengthNotation.Read(text, unit);
                    Assert.True(reading.Ok || reading.Fault!.Length > 5);
                    Assert.True(double.IsFinite(reading.Mm) && Math.Abs(reading.Mm) <= 1e6);
                },
                iter: 100_000
            );
}
