using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Topsides;

/// <summary>By how much two panels lie apart at the line that they share, where one has a station more, is that which a search from curve to curve finds.</summary>
public sealed partial class SharedLineGapTests
{
    [Fact]
    public void TheWidestGapIsThatBetweenTheCurves()
    {
        BottomPlan plan = WholeBottomTests.Planned(OneStationShort());
        (LoftedSurface below, LoftedSurface above) = (
            plan.Hull.Surface,
            plan.Others[0].Hull.Surface
        );
        Vec3[] bottom =
        [
            .. Enumerable
                .Range(0, 20_001)
                .Select(i => below.UFrom + ((below.UTo - below.UFrom) * i / 20_000))
                .Select(u => below.At(u, below.UpperV(u)).P),
        ];
        double from = bottom[0].X,
            widest = Enumerable
                .Range(0, 400)
                .Select(i => above.At(above.UFrom + ((above.UTo - above.UFrom) * i / 400), 0).P)
                .Where(p => p.X >= from)
                .Max(p => bottom.Min(b => b.ChordTo(p)));
        string told = plan
            .Findings.Single(f =>
                f.Message.Contains("is drawn through other stations", StringComparison.Ordinal)
            )
            .Message;
        double mm = double.Parse(Apart().Match(told).Groups[1].Value, CultureInfo.InvariantCulture);
        // On paper to half a millimetre.
        Assert.Equal(widest, mm, 0.3 + (0.1 * widest));
    }

    [GeneratedRegex(@"lie up to ([\d.]+) mm apart")]
    private static partial Regex Apart();

    /// <summary>A bottom whose keel begins a station abaft the topside's, on a chine that turns much between the two.</summary>
    private static Job OneStationShort()
    {
        double[] x = [0, 900, 1500, 2300, 3200, 4100];
        (double, double, double) Chine(double a) =>
            (a, 300 + (600 * Math.Sin(a / 1300)), 420 - (170 * Math.Sin(a / 1300)));
        Job job = TopsideJob.Of(
            [.. x.Select(Chine)],
            [.. x.Select(a => (a, Chine(a).Item2 + 80, Chine(a).Item3 + 600))],
            50,
            [6]
        );
        OffsetLine keel = job.Offsets.Find("keel")!;
        OffsetTable table = job.Offsets with
        {
            Lines =
            [
                keel with
                {
                    HeightsMm = [null, .. keel.HeightsMm.Skip(1)],
                    HalfBreadthsMm = [null, .. keel.HalfBreadthsMm.Skip(1)],
                },
                .. job.Offsets.Lines.Where(l => l != keel),
            ],
        };
        return job with { Offsets = table, Panels = [job.Panels[0] with { Offsets = table }] };
    }
}
