using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Joints;

/// <summary>The joints on paper: for each layer and side the stock, the rules with their sources, and a row a joint with the distances that govern.</summary>
public static class JointPages
{
    public static ImmutableArray<Drawing> Of(BottomPlan plan)
    {
        List<SheetPage> pages = [];
        foreach (JointedLayer jointed in plan.Joints.Layers)
        {
            bool both = IsMirrored(plan, jointed.Layer);
            if (jointed.Planks.IsEmpty || (both && jointed.Side == Side.Port))
            {
                continue;
            }

            PlankLayerPlan layer = plan.PlankLayers.First(l => l.Number == jointed.Layer);
            var block = new TitleBlock(
                "Joints in long planks",
                both
                    ? $"both sides, {SheetWords.Of(layer)}, outer face up"
                    : SheetWords.Of(jointed.Side, layer),
                SheetWords.Unit(plan.Job.Units),
                null,
                Cautions.Joints
            );
            bool butts = jointed.Stock.Kind == JointKind.Butt;
            // Two names in a cell and distances with theirs: the more columns there are, the wider a part of the page a name needs.
            JointRuleKind[] spoken =
            [
                .. Enum.GetValues<JointRuleKind>().Where(w => Spoken(jointed, w)),
            ];
            pages.AddRange(
                new ListSheet(
                    block,
                    Intro(plan, jointed, both),
                    [
                        new("joint", both ? 11 + spoken.Length : 9, false),
                        new(butts ? "on" : "scarf", 10, false),
                        new(butts ? "cut, outer face up" : "tapered on", 20, false),
                        new("lengths to saw", 15),
                        new("from the inboard tip", 9),
                        .. spoken.Select(w => new ListColumn(
                            JointWords.Of(w),
                            spoken.Length > 2 ? 13 : 15
                        )),
                    ],
                    [
                        .. JointRow
                            .Of(plan, jointed)
                            .Select(r => Row(r, jointed))
                            .Zip(JointRow.Of(plan, jointed))
                            .Select(r =>
                                both
                                    ? r.First.SetItem(0, $"{r.First[0]} {r.Second.Joint.Id.Twin}")
                                    : r.First
                            ),
                    ]
                ).Pages(plan.Job)
            );
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    private static bool Spoken(JointedLayer jointed, JointRuleKind what) =>
        jointed.Rules.Any(r => r.What == what)
        && jointed.Planks.Any(p => p.Joints.Any(j => j.Distances.Any(d => d.Rule.What == what)));

    /// <summary>Whether a layer's joints to port are those to starboard mirrored: the same on paper, but for which side's planks are named.</summary>
    private static bool IsMirrored(BottomPlan plan, int layer)
    {
        if (
            plan.Job.Output.BothSides
            || plan.Joints.Of(layer, Side.Starboard) is not { } starboard
            || plan.Joints.Of(layer, Side.Port) is not { } port
        )
        {
            return false;
        }

        JointRow[] one = [.. JointRow.Of(plan, starboard)],
            other = [.. JointRow.Of(plan, port)];
        return one.Length == other.Length
            && one.Zip(other)
                .All(r =>
                    r.First.Joint.Id.Twin == r.Second.Joint.Id
                    && Row(r.First, starboard)
                        .Zip(Row(r.Second, port))
                        .Skip(1)
                        .All(c => Unsided(c.First, 'S') == Unsided(c.Second, 'P'))
                );

        // What a joint is nearest to stands in brackets and begins with its side.
        static string Unsided(string cell, char side) =>
            cell.Replace($"({side}", "(", StringComparison.Ordinal);
    }

    private static ImmutableArray<string> Row(JointRow r, JointedLayer jointed) =>
        [
            r.Joint.Id.ToString(),
            r.Joint.Backing
                ?? $"{NumberText.Trimmed(r.Joint.Ratio ?? 0, 1)}:1, {LengthText.PaperNumber(r.Joint.LengthMm, r.Unit)}",
            r.Joint.Kind == JointKind.Butt
                ? JointWords.Cut(r.Plank, r.Joint, r.Unit)
                : $"{r.Joint.Id.Inboard} its {r.Joint.TaperedFace(true)} face, {r.Joint.Id.Outboard} its {r.Joint.TaperedFace(false)}",
            $"{LengthText.PaperNumber(r.Inboard.LengthMm, r.Unit, RoundTo.Up)} + {LengthText.PaperNumber(r.Outboard.LengthMm, r.Unit, RoundTo.Up)}",
            LengthText.PaperNumber(r.FromTipMm, r.Unit),
            .. Enum.GetValues<JointRuleKind>()
                .Where(w => Spoken(jointed, w))
                .Select(w => r.Of(w) is { } d ? JointWords.Distance(d, r.Unit) : "-"),
        ];

    private static ImmutableArray<string> Intro(BottomPlan plan, JointedLayer jointed, bool both)
    {
        LengthUnit unit = plan.Job.Units;
        JointStock stock = jointed.Stock;
        string how =
            stock.Kind == JointKind.Scarf
                ? "Both pieces lie on each other over the whole length of a scarf; the feather edge on the outer face points aft (common practice, no source)."
            : stock.Cut == ButtCut.Square ? "Butts are sawn square to the plank's centre line."
            : "Butts are sawn along the middle of what backs them.";
        return
        [
            $"{PlanWords.Count(jointed.Planks.Length, "plank")} longer than {LengthText.ForPaper(stock.LongestMm, unit)}, in {jointed.Pieces} pieces, {JointFindings.Fewest(jointed)}; none is shorter than {LengthText.ForPaper(stock.ShortestMm, unit)}. {how}",
            $"Distances to joints of other planks are along the planks, each carried square to the next; those to the layer below are straight, through the skins. In brackets, the joint or seam that is nearest.{(both ? " Port is starboard's mirror image: there it is that of port." : "")}",
            .. jointed.Rules.Select(r => JointWords.Sentence(r, unit)),
            .. JointWords.SwitchedOff(plan.Job.Joints),
        ];
    }
}
