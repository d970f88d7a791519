using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fastenings;

/// <summary>What a person should know of the fastenings before a hole is drilled.</summary>
internal static class FasteningFindings
{
    public static IEnumerable<Finding> Of(
        FasteningSpec spec,
        Planked planked,
        FramingPlan behind,
        ImmutableArray<LayerFastenings> layers,
        ImmutableDictionary<PlankId, PlankFastenings> all,
        ImmutableArray<LayerFastened> fastened
    )
    {
        LengthUnit unit = planked.Job.Units;
        bool timber = behind.Carrying.Any();
        if (!timber && layers.Any(l => l.Rule.Kind != FasteningKind.None))
        {
            yield return new(
                Severity.Warning,
                "fastenings",
                "no timber behind the planks is named, so there is nothing to fasten to; name the stringers and frames under [[behind]]"
            )
            {
                Rank = Rank.Know,
            };
        }

        foreach (string name in spec.Depths.Keys.Order(StringComparer.Ordinal))
        {
            if (behind.Things.All(b => b.Name != name))
            {
                yield return new(
                    Severity.Warning,
                    "fastenings",
                    $"a depth is given for \"{name}\", which no [[behind]] has for a name; it is not used"
                )
                {
                    Rank = Rank.Know,
                };
            }
        }

        foreach ((PlankLayerPlan layer, LayerFastenings rule) in planked.PlankLayers.Zip(layers))
        {
            string where = $"layer {rule.Name}";
            if (rule.Rule.PullDown is { } down)
            {
                int points = layer
                    .Starboard.Concat(layer.Port)
                    .Sum(p => all[p.Id].Points.Count(f => f.Use == FasteningUse.PullDown));
                yield return new(
                    Severity.Note,
                    where,
                    $"pull-down every {Small(down.SpacingMm, unit)} along and {Small(down.AcrossMm, unit)} across comes to {points} points between the timbers, both sides together: wider, or none, where the skin lies down by itself"
                );
            }

            foreach (Finding found in Lengths(where, rule, unit))
            {
                yield return found;
            }

            foreach (Finding found in Gaps(where, layer, rule, all, unit))
            {
                yield return found;
            }

            foreach (
                Finding found in RunFindings.Of(
                    where,
                    rule.Rule,
                    [.. fastened.SelectMany(f => f.Gaps).Where(g => g.Layer == layer.Number)],
                    unit
                )
            )
            {
                yield return found;
            }

            foreach (Finding found in timber ? BarePlanks.Of(where, layer, rule, all) : [])
            {
                yield return found;
            }

            foreach (
                Finding found in UnheldButts.Of(
                    where,
                    rule.Rule,
                    fastened.Where(f => f.Rule.Layer == layer.Number),
                    unit
                )
            )
            {
                yield return found;
            }
        }
    }

    private static IEnumerable<Finding> Lengths(
        string where,
        LayerFastenings layer,
        LengthUnit unit
    )
    {
        string Mm(double mm) => Small(mm, unit);
        foreach (
            IGrouping<
                (FasteningUse, double, double?, double?),
                ChosenLength
            > group in layer.Lengths.GroupBy(l => (l.Use, l.WantedBiteMm, l.DepthMm, l.LengthMm))
        )
        {
            ChosenLength l = group.First();
            string into =
                l.Use == FasteningUse.PullDown
                    ? "at the points between the timbers"
                    : "on " + string.Join(", ", group.Select(g => g.Backing));
            string reckoned =
                $"{Mm(l.PadMm)} of pad or strap, {Mm(l.PassedMm)} of planking and cloth";
            if (l.LengthMm is not { } length)
            {
                yield return new(
                    Severity.Warning,
                    where,
                    $"no length that can be had holds {into} without its point coming through: {reckoned}"
                        + (l.DepthMm is { } d ? $", {Mm(d)} of wood to bite into" : "")
                        + "; add a length to `lengths`, or change the pad. Until then none are bought or driven there"
                )
                {
                    Rank = Rank.Know,
                };
            }
            else if (l.BiteMm < l.WantedBiteMm - 0.05)
            {
                yield return new(
                    Severity.Warning,
                    where,
                    $"fastenings {into} are {Mm(length)} long and bite {Bites(l, unit)}: the next length that can be had would come through ({reckoned}); "
                        + "ask for a smaller `bite` if that will do, or another of `lengths`"
                )
                {
                    Rank = Rank.Know,
                };
            }

            if (l.Use == FasteningUse.Backing && l.DepthMm is null)
            {
                yield return new(
                    Severity.Warning,
                    where,
                    $"how deep the timber is {into} is not given, so that nothing keeps a point from coming through; give `backing-depth`"
                )
                {
                    Rank = Rank.Know,
                };
            }
        }
    }

    /// <summary>One finding a layer and backing: the planks without a fastening on it, and why; then those with fewer.</summary>
    private static IEnumerable<Finding> Gaps(
        string where,
        PlankLayerPlan layer,
        LayerFastenings rule,
        ImmutableDictionary<PlankId, PlankFastenings> all,
        LengthUnit unit
    )
    {
        foreach (
            IGrouping<(string, bool), (PlankId Id, FasteningGap Gap)> both in Planks(
                    layer,
                    all,
                    Side.Starboard
                )
                .Concat(Planks(layer, all, Side.Port))
                .GroupBy(g => (g.Gap.Backing, g.Gap.Placed == 0))
                .OrderByDescending(g => g.Key.Item2)
        )
        {
            ILookup<Side, (PlankId Id, FasteningGap Gap)> sides = both.ToLookup(g => g.Id.Side);
            bool alike =
                sides[Side.Starboard].Count() == sides[Side.Port].Count()
                && sides[Side.Starboard]
                    .Zip(sides[Side.Port])
                    .All(p => p.First.Id == p.Second.Id.Twin && p.First.Gap.IsTwinOf(p.Second.Gap));
            (PlankId Id, FasteningGap Gap)[] group =
            [
                .. both.Where(g => !alike || g.Id.Side == Side.Starboard),
            ];
            (string backing, bool none) = both.Key;
            string message;
            if (none)
            {
                message = $"no fastening on {backing} fits the rule in {Named(group, unit)}";
            }
            else
            {
                (PlankId worst, FasteningGap gap) = group.MaxBy(g => g.Gap.GapMm);
                message =
                    $"on {backing} fastenings are further apart than the {Small(rule.Rule.SpacingMm, unit)} of the rule in {PlankRuns.Words(group.Select(g => g.Id))}: "
                    + $"at most {Small(gap.GapMm, unit)}, in {worst} ({Why(gap, unit)})";
            }

            // A corner of a plank that just touches a timber needs none; a stretch longer than the spacing does.
            bool grave = group.Any(g => g.Gap.GapMm > 2 * rule.Rule.SpacingMm);
            yield return new(
                grave ? Severity.Warning : Severity.Note,
                where,
                message + (alike ? "; to port likewise" : "")
            )
            {
                Rank = Rank.Know,
            };
        }
    }

    private static IEnumerable<(PlankId Id, FasteningGap Gap)> Planks(
        PlankLayerPlan layer,
        ImmutableDictionary<PlankId, PlankFastenings> all,
        Side side
    ) => layer.On(side).SelectMany(p => all[p.Id].Short.Select(g => (p.Id, g)));

    /// <summary>Each with its reason; of many, which they are and the reason of one, since nobody reads fifty.</summary>
    private static string Named((PlankId Id, FasteningGap Gap)[] planks, LengthUnit unit)
    {
        const int most = 6;
        return planks.Length <= most
            ? string.Join(", ", planks.Select(p => $"{p.Id} ({Why(p.Gap, unit)})"))
            : $"{PlankRuns.Words(planks.Select(p => p.Id))}, as in {planks[0].Id} ({Why(planks[0].Gap, unit)})";
    }

    private static string Why(FasteningGap gap, LengthUnit unit) =>
        $"{Small(gap.Hindered.HasMm, unit)} from {gap.Hindered.By}, {Small(gap.Hindered.AsksMm, unit)} asked";

    /// <summary>What it bites and what is wanted; where both are told alike, by how much it is less.</summary>
    private static string Bites(ChosenLength l, LengthUnit unit)
    {
        (string bites, string wanted) = (Small(l.BiteMm, unit), Small(l.WantedBiteMm, unit));
        return bites == wanted
            ? $"{LengthText.Thin(l.WantedBiteMm - l.BiteMm, unit)} less than the {wanted} that is wanted"
            : $"{bites} where {wanted} is wanted";
    }

    internal static string Small(double mm, LengthUnit unit) => LengthText.ForPaper(mm, unit);
}
