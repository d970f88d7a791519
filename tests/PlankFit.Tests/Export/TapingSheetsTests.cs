using System.Text.RegularExpressions;
using PlankFit.Export.Checks;
using PlankFit.Export.Taping;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Trust;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Planking.Taping;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export;

/// <summary>What to tape and what the tape said, on paper, in millimetres and in feet and inches.</summary>
public sealed partial class TapingSheetsTests
{
    public static TheoryData<LengthUnit> Units =>
        LongRuns.FirstOf(LengthUnit.Foot, LengthUnit.Millimetre);

    [Theory]
    [MemberData(nameof(Units))]
    public void EverySheetCanBeReadAndPromisesNothing(LengthUnit unit)
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        var hulls = new TapedHulls(TapedHulls.Launch, TrustSpec.Default, 9);
        TapePlace[] places =
        [
            TapedHulls.Girth("4"),
            TapedHulls.Girth("8"),
            TapedHulls.Two(TapeKind.Diagonal, ("keel edge", "6"), ("chine", "7")),
        ];
        Job job = TapedHulls.Launch with
        {
            Units = unit,
            Trust = TrustSpec.Default,
            Joints = null,
            Fastenings = null,
            SettingUp = null,
            Framing = [],
            AsBuilt = AsBuiltSpec.None with { Readings = hulls.Read([.. places], hulls.Draw(), 2) },
        };
        BottomPlan plan = BottomPlanner
            .Plan(job, null, TestContext.Current.CancellationToken)
            .Plan!;
        TapeAdvice advice = TapeAdvisor.Of(
            plan.Planked,
            TrustSpec.Default,
            PlankSloper.Of(plan.Planked, TrustSpec.Default, plan.Trust!.Sureness.Slopes),
            plan.Taped,
            8
        );
        Drawing[] sheets =
        [
            .. CheckBeforeSawing.Of(plan, advice),
            .. TapedPages.Of(plan, plan.Taped!),
        ];
        Assert.All(sheets.SelectMany(s => SheetCheck.Faults(s)), f => Assert.Fail(f));
        string[] texts =
        [
            .. sheets.SelectMany(s => s.Shapes.OfType<Lettering>()).Select(l => l.Text),
            .. TapedWords.SawNow(plan, advice),
            .. advice.Wishes.Select((w, i) => TapedWords.Told(i + 1, w, unit)),
        ];
        Assert.DoesNotContain(texts, t => Promise().IsMatch(t));
        Assert.All(
            TapingTables
                .Planks(plan.Job, advice)
                .Columns.Where(c => c.Name.Contains("in 20", StringComparison.Ordinal)),
            c => Assert.Contains(TapedWords.If, c.Name, StringComparison.Ordinal)
        );
        // What is to be taped first stands ahead of all, and a limit beside what is taped between marks.
        Assert.Contains("Tape here first", sheets[0].Title, StringComparison.Ordinal);
        Assert.Contains(texts, t => t.StartsWith('±'));
        Assert.Contains(texts, t => t.Contains("if [trust] is right", StringComparison.Ordinal));
        // Planks are surer after what was taped than by the table alone.
        BottomPlan alone = BottomPlanner
            .Plan(
                job with
                {
                    AsBuilt = AsBuiltSpec.None,
                },
                null,
                TestContext.Current.CancellationToken
            )
            .Plan!;
        Assert.True(
            plan.Trust.Layers[0].Planks.Sum(p => p.LengthMm ?? 0)
                < alone.Trust!.Layers[0].Planks.Sum(p => p.LengthMm ?? 0)
        );
    }

    [GeneratedRegex(
        "will fit|exact|guarant|certain(ly)?\\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant
    )]
    private static partial Regex Promise();
}
