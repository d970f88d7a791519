using System.Collections.Immutable;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;

namespace PlankFit.Tests.Planking.Fairness;

/// <summary>How a table was read off and written down.</summary>
public enum Written
{
    /// <summary>Read to ±0.8 mm, written in whole millimetres.</summary>
    Millimetres,

    /// <summary>Written to the nearest 1/8 in, so that each value is up to 1/16 in off.</summary>
    Eighths,

    /// <summary>Read to ±1/16 in and then written to the nearest 1/8 in.</summary>
    RoughEighths,
}

/// <summary>
/// Hull-like tables by chance: keels with rocker, flat runs, forefeet that turn up sharply; sidings that are straight or taper; chines that run parallel aft,
/// tuck in, or spring by a hyperbolic tangent; in some a diagonal between. None is a curve that the judge was set by: those were Bezier curves.
/// </summary>
public static class RandomTable
{
    private const double Eighth = 25.4 / 8;

    public static LengthUnit Unit(Written written) =>
        written == Written.Millimetres ? LengthUnit.Millimetre : LengthUnit.FeetInchesEighths;

    public static OffsetTable Of(Random by, int stations, Written written)
    {
        double length = Within(by, 3500, 10000),
            closer = by.Next(3) == 0 ? 1 : Within(by, 1, 1.4),
            step = written == Written.Millimetres ? 10 : 2 * 25.4;
        double[] x =
        [
            .. Enumerable
                .Range(0, stations)
                .Select(i =>
                    Math.Round(length * Math.Pow(i / (stations - 1.0), closer) / step) * step
                ),
        ];
        Func<double, double> keelZ = KeelHeight(by, length),
            keelY = Siding(by),
            chineY = ChineHalfBreadth(by, length, keelY(0)),
            chineZ = ChineHeight(by, length);
        double round = Within(by, 0.01, 0.04);
        List<(string Name, Func<double, double> Z, Func<double, double> Y)> lines =
        [
            ("keel", keelZ, keelY),
            ("chine", chineZ, chineY),
        ];
        if (by.Next(3) == 0)
        {
            lines.Insert(
                1,
                (
                    "bilge",
                    t => ((keelZ(t) + chineZ(t)) / 2) - (round * chineY(t)),
                    t => ((keelY(t) + chineY(t)) / 2) + (round * chineY(t))
                )
            );
        }

        ImmutableArray<double?> Row(Func<double, double> of, double least) =>
            [.. x.Select(a => (double?)Math.Max(least, Read(of(a / x[^1]), written, by)))];
        return new(
            [.. x.Select((a, i) => new Station($"{i}", a))],
            [.. lines.Select(l => new OffsetLine(l.Name, [], Row(l.Z, -1e9), Row(l.Y, 0)))]
        );
    }

    /// <summary>The table with one cell out by so much; row counts heights and half-breadths of the lines in turn.</summary>
    public static OffsetTable With(OffsetTable table, int row, int station, double mm)
    {
        OffsetLine line = table.Lines[row / 2];
        return table with
        {
            Lines = table.Lines.SetItem(
                row / 2,
                row % 2 == 0
                    ? line with
                    {
                        HeightsMm = line.HeightsMm.SetItem(station, mm),
                    }
                    : line with
                    {
                        HalfBreadthsMm = line.HalfBreadthsMm.SetItem(station, mm),
                    }
            ),
        };
    }

    public static double Cell(OffsetTable table, int row, int station) =>
        OffsetRow.Cells(table.Lines[row / 2], MeasureOf(row))[station]!.Value;

    public static Measure MeasureOf(int row) => row % 2 == 0 ? Measure.Height : Measure.HalfBreadth;

    /// <summary>Written anew as the table is: what a hand would put down for this length.</summary>
    private static double Read(double mm, Written written, Random by) =>
        written switch
        {
            Written.Millimetres => Math.Round(mm + Within(by, -0.8, 0.8)),
            Written.Eighths => Math.Round(mm / Eighth) * Eighth,
            _ => Math.Round((mm + Within(by, -Eighth / 2, Eighth / 2)) / Eighth) * Eighth,
        };

    private static double Within(Random by, double from, double to) =>
        from + ((to - from) * by.NextDouble());

    private static Func<double, double> KeelHeight(Random by, double length)
    {
        double rise = length * Within(by, 0.02, 0.12),
            power = Within(by, 2, 4),
            flat = Within(by, 0.35, 0.65),
            knuckle = Within(by, 0.06, 0.15),
            rocker = length * Within(by, 0, 0.006),
            decay = Within(by, 3, 6);
        return by.Next(4) switch
        {
            0 => t => (rise * Math.Pow(1 - t, power)) + (rocker * t * t),
            1 => t => t >= flat ? 0 : rise * Math.Pow((flat - t) / flat, Math.Min(power, 3.2)),
            2 => t => rise * (Math.Exp(-decay * t) - Math.Exp(-decay)),
            _ => Knuckled(rise, 0.6 * flat, knuckle),
        };
    }

    /// <summary>Straight down to t = at and straight on from there, the corner rounded over some times the radius.</summary>
    private static Func<double, double> Knuckled(double rise, double at, double radius) =>
        t => rise * radius / at * Math.Log(1 + Math.Exp((at - t) / radius));

    private static Func<double, double> Siding(Random by)
    {
        double half = Within(by, 12, 45),
            more = Within(by, 0, 20),
            power = Within(by, 1.5, 3);
        return by.Next(3) switch
        {
            0 => _ => half,
            1 => t => half + (more * t),
            _ => t => half + (more * (1 - Math.Pow(1 - t, power))),
        };
    }

    private static Func<double, double> ChineHalfBreadth(Random by, double length, double siding)
    {
        double beam = length * Within(by, 0.1, 0.18),
            stem = siding + (beam * Within(by, 0.05, 0.35)),
            power = Within(by, 2, 3.2),
            tuck = beam * Within(by, 0, 0.08),
            widest = Within(by, 0.5, 0.75),
            spring = Within(by, 1.5, 2.5),
            narrowing = by.Next(2) * Within(by, 0, 0.25);
        return by.Next(4) switch
        {
            0 => t => stem + (beam * (1 - Math.Pow(1 - t, power))) - (tuck * t * t * t),
            1 => t => stem + (beam * Math.Tanh(spring * t)),
            2 => t => siding + (beam * Math.Sin(0.15 + ((1.7 - narrowing) * t))),
            _ => t =>
                stem
                + (
                    beam
                    * (
                        t < widest
                            ? 1 - Math.Pow((widest - t) / widest, power)
                            : 1 - (narrowing * Math.Pow(t - widest, 2))
                    )
                ),
        };
    }

    private static Func<double, double> ChineHeight(Random by, double length)
    {
        double rise = length * Within(by, 0.03, 0.1),
            aft = length * Within(by, 0.03, 0.08),
            power = Within(by, 2, 3.5),
            flat = Within(by, 0.5, 0.8),
            knuckle = Within(by, 0.06, 0.15);
        Func<double, double> knuckled = Knuckled(rise, 0.6 * flat, knuckle);
        return by.Next(4) switch
        {
            0 => t => aft + (rise * Math.Pow(1 - t, power)) + (0.1 * rise * t * t),
            1 => t =>
                aft + (t >= flat ? 0 : rise * Math.Pow((flat - t) / flat, Math.Min(power, 3))),
            2 => t => aft + (1.5 * rise * (t - flat) * (t - flat)),
            _ => t => aft + knuckled(t),
        };
    }
}
