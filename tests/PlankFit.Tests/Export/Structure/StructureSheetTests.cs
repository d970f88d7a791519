using System.Globalization;
using PlankFit.Export.Structure;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Structure;

/// <summary>What a bottom of few and thin skins comes to: no table is left empty, no row stands twice, and no coupon is asked to bend further than it is reckoned for.</summary>
public sealed class StructureSheetTests
{
    [Theory]
    [InlineData(1, LengthUnit.Millimetre)]
    [InlineData(1, LengthUnit.FeetInchesEighths)]
    [InlineData(2, LengthUnit.Millimetre)]
    public void ABottomWithoutClothHasItsCouponAndStandsOnceBesideItself(int skins, LengthUnit unit)
    {
        BottomPlan plan = Of(skins, unit, new());
        StationStiffness at = plan.Structure!.Governing!;
        Assert.Equal(
            ["as planned", "the same mass in one skin of wood, its grain along the hull"],
            at.Lays.Select(l => l.Name)
        );
        string[] words = Words(plan);
        // Among the stacks, and as a coupon.
        Assert.Equal(2, words.Count(w => w == "as planned"));
    }

    /// <summary>Stringers part a bottom of one skin as they do one of two: 400 mm out on a plane of 20 degrees, measured on the face that the outermost is laid on.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void StringersPartABottomOfOneSkinToo(int skins)
    {
        BottomPlan plan = Of(skins, LengthUnit.Millimetre, new() { PressureMPa = 0.02 });
        SnapFace face = plan.Framing.UnderOutermost!;
        Assert.Equal(skins, face.Layer);
        Assert.All(
            plan.Structure!.Stations,
            s =>
            {
                double girth = face.Girths.Single(g => g.Station == s.Station).GirthMm,
                    // Square through the first skin, whose keel's side is plumb.
                    out_ = 400 + ((skins - 1) * 9 * Math.Tan(20 * Math.PI / 180));
                Assert.Equal(Math.Max(out_, girth - out_), s.SpanMm!.Value, 0.01);
                Assert.NotNull(s.AsPlanned.DeflectionMm);
            }
        );
        Assert.DoesNotContain(
            Words(plan),
            w => w.StartsWith("No panel is bent", StringComparison.Ordinal)
        );
    }

    /// <summary>A load that bends a strip by more than a tenth of its span is refused, and one is told under which no strip goes so far.</summary>
    [Fact]
    public void ACouponIsNotAskedToBendFurtherThanItIsReckonedFor()
    {
        CouponSpec heavy = new() { Newtons = 2000 };
        BottomPlan plan = Of(2, LengthUnit.Millimetre, new() { Coupon = heavy });
        string[] words = Words(plan);
        Assert.Contains("too far", words);
        string told = string.Join(' ', words),
            load = told[(told.IndexOf("no more load than ", StringComparison.Ordinal) + 18)..];
        double newtons = double.Parse(load.Split(' ')[0], CultureInfo.InvariantCulture);
        Assert.InRange(newtons, 10, 1990);
        Assert.Contains("too far", Words(With(newtons + 20)));
        string[] good = Words(With(newtons));
        Assert.DoesNotContain("too far", good);
        Assert.DoesNotContain(
            good,
            w => w.StartsWith("NOT UNDER THIS LOAD", StringComparison.Ordinal)
        );

        BottomPlan With(double n) =>
            Of(2, LengthUnit.Millimetre, new() { Coupon = heavy with { Newtons = n } });
    }

    /// <summary>The load of each plain strip by hand, F = 48 EI d/L³ with I = b h³/12, for just the way down that is told, which a rule can read: 1 % of 400 mm, and 4 mm is 5/32" of 16".</summary>
    [Theory]
    [InlineData(LengthUnit.Millimetre, 400, 4, "4 mm")]
    [InlineData(LengthUnit.Millimetre, 260, 2.5, "2.5 mm")]
    [InlineData(LengthUnit.FeetInchesEighths, 406.4, 3.96875, "5/32\"")]
    public void APlainStripGoesDownAsToldUnderItsLoad(
        LengthUnit unit,
        double spanMm,
        double downMm,
        string told
    )
    {
        BottomPlan plan = Of(
            2,
            unit,
            new()
            {
                Coupon = new() { SpanMm = spanMm, WidthMm = 50 },
            }
        );
        string[] words = Words(plan);
        Assert.Contains(
            $"brings it down by {told}. ",
            string.Join(' ', words),
            StringComparison.Ordinal
        );
        Assert.All(
            plan.Structure!.Governing!.Boards,
            b =>
            {
                foreach (double modulus in new[] { b.AlongMPa, b.ByAxesMPa, b.ByHankinsonMPa })
                {
                    double inertia = 50 * Math.Pow(b.Ply.ThicknessMm, 3) / 12,
                        newtons = 48 * modulus * inertia * downMm / Math.Pow(spanMm, 3);
                    Assert.Contains(StructureWords.Hung(newtons, unit), words);
                }
            }
        );
    }

    /// <summary>What is weighed out is never told as less than is wanted, and by no more than a hundredth above it.</summary>
    [Theory]
    [InlineData(LengthUnit.Millimetre, 1)]
    [InlineData(LengthUnit.Foot, 0.45359237)]
    public void TheBillIsWeighedUp(LengthUnit unit, double kg)
    {
        var chance = new Random(5);
        for (int i = 0; i < 200; i++)
        {
            double amount = chance.NextDouble() * 30;
            (string told, _) = StructureWords.Amount(
                new("resin", "r", "all", amount, "kg", "test"),
                unit
            );
            Assert.InRange(
                double.Parse(told, CultureInfo.InvariantCulture) - (amount / kg),
                -1e-9,
                0.01
            );
        }

        Assert.Equal(
            "2.00",
            StructureWords.Amount(new("resin", "r", "all", 2 * kg, "kg", "test"), unit).Amount
        );
    }

    /// <summary>What comes off a roll reads in the bill as in the list of what to order: it was 47.59 ft here and 47'-7" there.</summary>
    [Theory]
    [InlineData(LengthUnit.FeetInchesEighths, 14.5034, "47'-7\"", "")]
    [InlineData(LengthUnit.Foot, 14.5034, "47'-7\"", "")]
    [InlineData(LengthUnit.Inch, 14.5034, "571\"", "")]
    [InlineData(LengthUnit.Millimetre, 16.44, "16440", "mm")]
    [InlineData(LengthUnit.Metre, 16.44, "16.44", "m")]
    public void TheBillWritesLengthsAsTheOrderDoes(
        LengthUnit unit,
        double metres,
        string amount,
        string called
    )
    {
        var row = new BillRow("cloth", "c", "all", metres, "m", "test");
        Assert.Equal((amount, called), StructureWords.Amount(row, unit));
        Assert.Equal(LengthText.ToOrder(1000 * metres, unit), StructureWords.Shown(row, unit));
    }

    private static BottomPlan Of(int skins, LengthUnit unit, StructureSpec asked)
    {
        Job job = PrismaticPlan.Build(new Prism(DeadriseDegrees: 20)).Job;
        return WholeBottomTests.Planned(
            job with
            {
                Units = unit,
                Layers = [.. job.Layers.Take(skins)],
                Timber = TimberSpec.Default with { Species = "douglas-fir" },
                Framing =
                [
                    new(
                        "stringer",
                        FramingKind.Stringer,
                        new FramingLine.FromKeel(400),
                        40,
                        null,
                        null
                    ),
                ],
                Structure = asked,
            }
        );
    }

    private static string[] Words(BottomPlan plan) =>
        [
            .. StructureSheets
                .Of(plan, plan.Structure!)
                .SelectMany(d => d.Shapes.OfType<Lettering>())
                .Select(l => l.Text),
        ];
}
