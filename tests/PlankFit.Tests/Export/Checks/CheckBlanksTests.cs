using PlankFit.Export.Checks;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export.Checks;

/// <summary>The blanks of the check sheet as rows, held to the sheet and to numbers worked out by hand for the prism.</summary>
public sealed class CheckBlanksTests
{
    private static CheckBlank[] Blanks(BottomPlan plan) =>
        [.. CheckBlanks.Of(plan, null).SelectMany(g => g.Blanks)];

    private static CheckBlank At(BottomPlan plan, string name) =>
        Blanks(plan).Single(b => b.Id == BlankId.Parse(name));

    /// <summary>As many blanks as the sheets have lines to write on, and each one's figure stands on them as often.</summary>
    [Theory]
    [InlineData(LengthUnit.Millimetre)]
    [InlineData(LengthUnit.FeetInchesEighths)]
    public void EveryBlankOfTheSheetIsThere(LengthUnit unit)
    {
        BottomPlan plan = PrismChecks.With(new Prism(Units: unit));
        Drawing[] sheets =
        [
            .. CheckBeforeSawing
                .Of(plan)
                .Where(p => p.Title.Contains("Check before sawing", StringComparison.Ordinal)),
        ];
        CheckBlank[] blanks = [.. Blanks(plan).Where(b => b.Id.What != BlankId.TenOfTheStock)];
        Assert.Equal(
            sheets.Sum(s => s.Shapes.OfType<Polyline>().Count(l => l.Pen == Pens.Net)),
            blanks.Length
        );
        string[] texts =
        [
            .. sheets.SelectMany(s => s.Shapes.OfType<Lettering>().Select(l => l.Text)),
        ];
        foreach (
            IGrouping<string, CheckBlank> same in blanks.GroupBy(b =>
                LengthText.PaperNumber(b.ShouldMm, unit)
            )
        )
        {
            Assert.True(
                texts.Count(t =>
                    t == same.Key || t.StartsWith(same.Key + " ", StringComparison.Ordinal)
                ) >= same.Count(),
                same.Key
            );
        }

        Assert.Equal(blanks.Length, blanks.Select(b => b.Id).Distinct().Count());
        Assert.Equal(plan.AllPlankLayers.Count(), Blanks(plan).Length - blanks.Length);
    }

    /// <summary>See CheckSheetTests for where the figures come from.</summary>
    [Fact]
    public void FiguresAreThoseOfThePlane()
    {
        BottomPlan plan = PrismChecks.With(new Prism());
        string master = $"S1-{plan.PlankLayers.First().MasterNumber:00}";
        CheckBlank seam = At(plan, "seam length | S1-20 after | starboard | 1"),
            lower = At(plan, $"a | {master} after | starboard | 1");
        Assert.Equal(1495.7097, seam.ShouldMm, 1e-3);
        Assert.Equal(
            Math.Sqrt((1269.7584 * 1269.7584) + (1057.6264 * 1057.6264)),
            At(plan, "d | S1-20 | starboard | 1").ShouldMm,
            1e-3
        );
        Assert.Equal(319.4715, lower.ShouldMm, 1e-3);
        Assert.Equal(738.1549, At(plan, $"b | {master} after | starboard | 1").ShouldMm, 1e-3);
        Assert.Contains("station 3, forward", lower.Where, StringComparison.Ordinal);
        Assert.Equal(3, seam.LimitMm);
        // Without [trust] no tape adjusts the hull.
        Assert.DoesNotContain(Blanks(plan), b => b.IsTakenUp);
        Assert.Equal(1500, At(plan, "ten of the stock | 1 | both | 1").ShouldMm, 1e-9);
    }

    /// <summary>On paper 1495.5 within 3 mm: a tenth of a millimetre parts within from beyond, on either side.</summary>
    [Theory]
    [InlineData(1498.5, BlankVerdict.Within)]
    [InlineData(1498.6, BlankVerdict.Beyond)]
    [InlineData(1492.5, BlankVerdict.Within)]
    [InlineData(1492.4, BlankVerdict.Beyond)]
    public void ATenthPartsWithinFromBeyond(double mm, BlankVerdict verdict)
    {
        CheckBlank seam = At(
            PrismChecks.With(new Prism()),
            "seam length | S1-20 after | starboard | 1"
        );
        Assert.Equal(
            verdict,
            BlankJudge.Of(seam, mm, seam.ShouldMm, LengthUnit.Millimetre).Verdict
        );
        // Marks that lay half a millimetre elsewhere are others.
        Assert.Equal(
            BlankVerdict.OfAnotherLayOut,
            BlankJudge.Of(seam, mm, seam.ShouldMm + 0.6, LengthUnit.Millimetre).Verdict
        );
    }

    /// <summary>4 ft 10 7/8 in within 1/8 in, which is limit on sheets in inches.</summary>
    [Theory]
    [InlineData(59, BlankVerdict.Within)]
    [InlineData(59.03125, BlankVerdict.Beyond)]
    [InlineData(58.75, BlankVerdict.Within)]
    [InlineData(58.71875, BlankVerdict.Beyond)]
    public void AThirtySecondPartsWithinFromBeyond(double inches, BlankVerdict verdict)
    {
        CheckBlank seam = At(
            PrismChecks.With(new Prism(Units: LengthUnit.FeetInchesEighths)),
            "seam length | S1-20 after | starboard | 1"
        );
        Assert.Equal(
            verdict,
            BlankJudge.Of(seam, inches * 25.4, null, LengthUnit.FeetInchesEighths).Verdict
        );
    }

    /// <summary>A seam that stands twice on a sheet is held to the row that it was read from; both are of one row of the file.</summary>
    [Theory]
    [InlineData(1490.2, 1490.0)]
    [InlineData(1493.8, 1494.0)]
    [InlineData(null, 1490.0)]
    public void ABlankIsFoundByWhatItShouldSay(double? read, double should)
    {
        BlankId id = BlankId.Parse("seam length | S1-20 after | starboard | 1")!.Value;
        static CheckBlank Of(BlankId id, double mm, bool taken) =>
            new(id, "", mm, 3, [1, 2]) { GoesWithTheLayOut = true, IsTakenUp = taken };
        var found = new BlankSearch([
            new("Tape here first", [Of(id, 1490, true)]),
            new(
                "Layer 1",
                [Of(id with { Where = "S1-21 after" }, 1492, true), Of(id, 1494, false)]
            ),
        ]);
        CheckBlank? blank = found.Of(id with { Time = 2 }, read);
        Assert.NotNull(blank);
        Assert.Equal((should, true), (blank.ShouldMm, blank.IsTakenUp));
        Assert.True(BlankJudge.IsOfThisLayOut(blank, read));
        Assert.Null(found.Of(id with { What = BlankId.Diagonal }, read));
    }

    [Fact]
    public void TenOfTheStockSayTheTrueWidth()
    {
        CheckBlank ten = At(PrismChecks.With(new Prism()), "ten of the stock | 1 | both | 1");
        (BlankVerdict verdict, string words) = BlankJudge.Of(
            ten,
            1503,
            null,
            LengthUnit.Millimetre
        );
        Assert.Equal((BlankVerdict.NoLimit, "a tenth of it is 150.3 mm"), (verdict, words));
    }

    /// <summary>A name goes there and back, whatever stands in it; what is none is none.</summary>
    [Fact]
    public void NamesGoThereAndBack()
    {
        foreach (
            BlankId id in new BlankId[]
            {
                new("half-breadth", "chine | both | 2/5 | 1", Side.Port, 2),
                new("height", "=1+1/0", null, 1),
                new("d", "S1-07", Side.Starboard, BlankId.MostTimes),
            }
        )
        {
            Assert.Equal(id, BlankId.Parse(id.ToString()));
        }

        foreach (
            string none in new[]
            {
                "",
                " | ",
                " |  | both | 1",
                "girth | 3 | both",
                "girth | 3 | both | 0",
                "girth | 3 | both | 100",
                "girth | 3 | both | +1",
                "girth | 3 | aft | 1",
                "girth |  | both | 1",
                "depth | 3 | both | 1",
                "girth | 3\n | both | 1",
                $"girth | {new string('3', 401)} | both | 1",
            }
        )
        {
            Assert.Null(BlankId.Parse(none));
        }
    }
}
