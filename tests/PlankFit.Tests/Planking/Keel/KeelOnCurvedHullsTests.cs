using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.Keel;

/// <summary>The mitre on curved bottoms, against faces found by a rolling ball on the hull's own formula.</summary>
public sealed class KeelOnCurvedHullsTests
{
    private const double KeelHalf = 40;
    private const double Plank = 9;
    private const double Cloth = 1;

    /// <summary>Warped: z = y (0.2 + 0.1 x), metres; the loft has it exactly, straight keel, straight chine, straight sections.</summary>
    private static double Warped(double x, double y) => y * (0.2 + (0.1 * x / 1000));

    /// <summary>Constant deadrise of 20 degrees on a keel z = 0.3 (x / 6)², metres.</summary>
    private static double Rockered(double x, double y) =>
        (300 * x / 6000 * (x / 6000)) + (y * Math.Tan(20 * Math.PI / 180));

    public static TheoryData<string, double> Hulls =>
        new() { { "warped", 1e-5 }, { "rockered", 2e-3 } };

    [Theory]
    [MemberData(nameof(Hulls))]
    public void HalfWidthsAreWhereTheRealFacesMeet(string hull, double toleranceMm)
    {
        Func<double, double, double> z = hull == "warped" ? Warped : Rockered;
        double[] keelThicknesses = [9, 11];
        Job job = Job(z) with
        {
            Keel = KeelSpec.None with
            {
                Layers =
                [
                    PlaneBottom.KeelLayer("first layer", "inner", keelThicknesses[0]),
                    PlaneBottom.KeelLayer("second layer", "outer", keelThicknesses[1]),
                ],
            },
        };
        KeelPlan keel = WholeBottomTests.Planned(job).Keel!;
        double[] planks = [Plank, (2 * Plank) + Cloth],
            timber = [keelThicknesses[0], keelThicknesses.Sum() + Cloth];
        for (int i = 0; i < 2; i++)
        {
            // The ends are left out: there the balls would roll off the formula's hull, which the loft carries on otherwise.
            KeelStation[] rows =
            [
                .. keel.Layers[i].Stations.Where(r => r.Side == Side.Starboard).Skip(1).SkipLast(1),
            ];
            Assert.True(rows.Length >= 6);
            foreach (KeelStation row in rows)
            {
                double x = row.PositionMm,
                    face = RollingBall.Under(at => z(at, KeelHalf), x, timber[i]);
                double should = RollingBall.Crossing(
                    y => RollingBall.Under(z, x, y, planks[i]) - face,
                    5,
                    150
                );
                Assert.Equal(should, row.WantedHalfWidthMm, toleranceMm);
            }
        }
    }

    /// <summary>The flat formula is no more than a check on a curved bottom: on the warped one it is out by what this shows, and the real faces are what counts.</summary>
    [Fact]
    public void TheFlatFormulaIsNearOnAGentlyCurvedBottom()
    {
        Job job = Job(Rockered) with
        {
            Keel = KeelSpec.None with
            {
                Layers = [PlaneBottom.KeelLayer("first layer", "inner", 9)],
            },
        };
        double tb = Math.Tan(20 * Math.PI / 180);
        foreach (KeelStation row in WholeBottomTests.Planned(job).Keel!.Layers[0].Stations)
        {
            double tp = 600 * row.PositionMm / 36e6;
            double formula =
                KeelHalf
                + (9 * (Math.Sqrt(1 + (tb * tb) + (tp * tp)) - Math.Sqrt(1 + (tp * tp))) / tb);
            Assert.Equal(formula, row.WantedHalfWidthMm, 0.02);
        }
    }

    private static readonly double[] Positions =
    [
        .. Enumerable.Range(0, 13).Select(i => i * 500.0),
    ];

    private static Job Job(Func<double, double, double> z) =>
        PlaneBottom.Job(20, 0, Plank, Cloth, OffsetsAreTo.Inside) with
        {
            Offsets = new(
                [.. Positions.Select((x, i) => new Station($"{i}", x))],
                [Line("keel", z, KeelHalf), Line("chine", z, 1000)]
            ),
        };

    private static OffsetLine Line(string name, Func<double, double, double> z, double y) =>
        new(
            name,
            [],
            [.. Positions.Select(x => (double?)z(x, y))],
            [.. Positions.Select(_ => (double?)y)]
        );
}
