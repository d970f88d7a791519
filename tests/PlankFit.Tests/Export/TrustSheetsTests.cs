using System.Text.RegularExpressions;
using PlankFit.Export.Cards;
using PlankFit.Export.Trust;
using PlankFit.Export.Whole;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Export;

/// <summary>How sure planks are, as it comes on paper: on a demo in millimetres, on one in feet and inches and on a hull by chance that is no demo.</summary>
public sealed partial class TrustSheetsTests
{
    [Theory]
    [InlineData("tender", LengthUnit.Millimetre)]
    [InlineData("tender", LengthUnit.Foot)]
    [InlineData("", LengthUnit.Millimetre)]
    [InlineData("", LengthUnit.Inch)]
    public void EverySheetCanBeReadAndPromisesNothing(string demo, LengthUnit unit)
    {
        BottomPlan plan = Plan(demo, unit);
        Drawing[] sheets = [.. TrustSheets.Of(plan, plan.Trust!)];
        Assert.True(sheets.Length >= 2 * plan.PlankLayers.Count());
        Assert.All(sheets.SelectMany(s => SheetCheck.Faults(s)), f => Assert.Fail(f));
        string[] cards = [.. Texts(PlankCardPages.Of(OnPlanks.Of(plan)))];
        string[] all = [.. Texts(sheets), .. cards, .. plan.Trust!.Findings.Select(f => f.Message)];
        Assert.DoesNotContain(all, t => Promise().IsMatch(t));
        Assert.All(
            all.Where(t => t.Contains("19 times in 20", StringComparison.Ordinal)),
            t => Assert.Contains("if [trust]", t + " " + After(all, t), StringComparison.Ordinal)
        );
        Assert.Contains(cards, t => t.Contains("19 times in 20", StringComparison.Ordinal));
        string[] heads =
        [
            .. TrustTables.Planks(plan, plan.Trust!).Columns.Select(c => c.Name),
            .. TrustTables.Keel(plan.Job, plan.Trust!).Columns.Select(c => c.Name),
        ];
        Assert.Equal(
            heads.Count(h => h.Contains("19 times in 20", StringComparison.Ordinal)),
            heads.Count(h => h.Contains("if [trust] is right", StringComparison.Ordinal))
        );
        Assert.Contains(heads, h => h.Contains("19 times in 20", StringComparison.Ordinal));
        Assert.Contains(
            cards,
            t => t.Contains("two seams' marks and not by its angle", StringComparison.Ordinal)
        );
    }

    /// <summary>±7.3 is more than a saw or a rule has.</summary>
    [Fact]
    public void NoTenthsAreTold()
    {
        BottomPlan plan = Plan("tender", LengthUnit.Millimetre);
        foreach (
            Match told in Texts([
                    .. TrustSheets.Of(plan, plan.Trust!),
                    .. PlankCardPages.Of(OnPlanks.Of(plan)),
                ])
                .SelectMany(t => Out().Matches(t))
        )
        {
            Assert.True(told.Groups[1].Value is "" or ".5", told.Value);
        }
    }

    /// <summary>Where nothing is trusted nothing is drawn: cards are the very same.</summary>
    [Fact]
    public void WithoutTrustCardsAreAsTheyWere()
    {
        BottomPlan told = Plan("tender", LengthUnit.Millimetre),
            not = told with { Trust = null };
        Assert.DoesNotContain(
            Texts(PlankCardPages.Of(OnPlanks.Of(not))),
            t => t.Contains("trust", StringComparison.OrdinalIgnoreCase) || t.Contains('±')
        );
        Assert.NotEqual(
            Texts(PlankCardPages.Of(OnPlanks.Of(told))),
            Texts(PlankCardPages.Of(OnPlanks.Of(not)))
        );
    }

    /// <summary>± stands at an end that is fit and at no end that is left long by more.</summary>
    [Fact]
    public void OnlyEndsThatAreFitAreTold()
    {
        BottomPlan plan = Plan("tender", LengthUnit.Millimetre);
        Assert.Equal(
            plan.PlankLayers.Sum(l => l.Starboard.Length),
            TrustTables.Planks(plan, plan.Trust!).Rows.Length
        );
        foreach (
            Match told in Texts(PlankCardPages.Of(OnPlanks.Of(plan)))
                .SelectMany(t => Fit().Matches(t))
        )
        {
            Assert.Equal("keel", told.Groups[1].Value);
        }

        Assert.Equal(EndCut.Fit, plan.Job.Ends.Lower.Cut);
        Assert.Equal(EndCut.LeftLong, plan.Job.Ends.Upper.Cut);
    }

    private static BottomPlan Plan(string demo, LengthUnit unit)
    {
        using var folder = new TempFolder();
        string file =
            demo.Length > 0
                ? Path.Combine(DemoTables.Folder(demo), "job.toml")
                : ChanceJob.Write(11, folder.Path);
        Job job = JobReader.Read(file).Job!;
        return BottomPlanner
            .Plan(
                new Job(
                    job.Planking with
                    {
                        Layers = [job.Layers.OfType<PlankLayerSpec>().First()],
                        Keel = KeelSpec.None,
                        Timber = null,
                        AsBuilt = AsBuiltSpec.None,
                        Units = unit,
                    }
                )
                {
                    Name = "How sure",
                    Trust = TrustSpec.Default,
                },
                null,
                TestContext.Current.CancellationToken
            )
            .Plan!;
    }

    private static IEnumerable<string> Texts(IEnumerable<Drawing> sheets) =>
        sheets.SelectMany(s => s.Shapes.OfType<Lettering>().Select(l => l.Text));

    /// <summary>The line after one, where a sentence goes on.</summary>
    private static string After(string[] all, string text) =>
        Array.IndexOf(all, text) is var i && i + 1 < all.Length ? all[i + 1] : "";

    [GeneratedRegex("will fit|exact|guarantee", RegexOptions.IgnoreCase)]
    private static partial Regex Promise();

    [GeneratedRegex(@"±\d+(\.\d+)?")]
    private static partial Regex Out();

    [GeneratedRegex(@"Fit at (\w+) ±")]
    private static partial Regex Fit();
}
