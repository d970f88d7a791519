using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Joints;

/// <summary>What a person should know of the joints.</summary>
public static class JointFindings
{
    /// <summary>Up to so many layers Gougeon Brothers ask for scarfs rather than butts.</summary>
    private const int FewLayers = 3;

    /// <summary>What concerns the job rather than one layer.</summary>
    internal static IEnumerable<Finding> OfSpec(JointSpec spec, Planked planked, FramingPlan behind)
    {
        string[] layers = [.. planked.PlankLayers.Select(l => l.Spec.Name)];
        JointStock[] stocks = [.. layers.Select(spec.Of).OfType<JointStock>().Distinct()];
        string[] known =
        [
            .. JointStock.Carrying,
            JointStock.Block,
            JointStock.LayerBelow,
            .. behind.Things.Select(b => b.Name),
        ];
        foreach (string name in stocks.SelectMany(s => s.On).Distinct().Except(known))
        {
            yield return new(
                Severity.Warning,
                "[joints] on",
                $"\"{name}\" is nothing that [[behind]] names; no butt is laid on it (known: {string.Join(", ", known)})"
            )
            {
                Rank = Rank.SawAfter,
            };
        }

        if (stocks.Any(s => s.Kind == JointKind.Butt) && layers.Length <= FewLayers)
        {
            yield return new(
                Severity.Note,
                "[joints]",
                $"a hull of {layers.Length} layer{(layers.Length == 1 ? "" : "s")} is butted; Gougeon Brothers on Boat Construction, ch. 21 (p. 231), uses 8:1 scarfs, not butts, where there are only two or three"
            );
        }
    }

    /// <summary>What came of a layer and side.</summary>
    internal static IEnumerable<Finding> Of(
        LayerCase layer,
        ImmutableArray<JointRule> rules,
        SchemeChoice choice,
        JointedLayer? pieced,
        Relief? relief,
        LengthUnit units
    )
    {
        string where = $"layer {layer.Layer.Spec.Name}";
        string Mm(double mm) => LengthText.ForPaper(mm, units);
        PlankCase[] whole = [.. layer.Planks.Where(p => p.LeastJoints is null)];
        if (whole.Length > 0)
        {
            PlankCase first = whole[0];
            yield return new(
                Severity.Warning,
                first.Plank.Id,
                $"{NumberText.Count(whole.Length, "plank")} a side of {where}: longer than the longest usable piece, {Mm(layer.Stock.LongestMm)}, and left whole: "
                    + (
                        first.Places.IsEmpty
                            ? NothingBehind(layer.Stock)
                            : $"none of the {first.Places.Length} places for a joint leaves pieces between {Mm(layer.Stock.ShortestMm)} and {Mm(layer.Stock.LongestMm)}"
                    )
            )
            {
                Rank = Rank.DoNotSaw,
            };
        }

        if (relief is not null && choice.Stuck is { } stuck)
        {
            yield return new(
                Severity.Warning,
                layer.Planks[stuck].Plank.Id,
                $"{where} cannot be pieced by its rules of stagger, so that all its planks are left whole: going aft, this is the first plank for which {(choice.Complete ? "no place is left" : "no place was found")}. {Advice(relief, units)}"
            )
            {
                Rank = Rank.DoNotSaw,
            };
        }

        if (pieced is null || pieced.Planks.IsEmpty)
        {
            yield break;
        }

        PlankId[] sawn =
        [
            .. layer
                .Planks.Select(p => p.Plank)
                .Where(p => p.IsSawn && pieced.Planks.Any(j => j.PlankId == p.Id))
                .Select(p => p.Id),
        ];
        if (sawn.Length > 0)
        {
            yield return new(
                Severity.Warning,
                sawn[0],
                $"{PlankRuns.Words(sawn)}: sawn already, and joints are chosen anew in every lay-out; hold those shown now against the pieces as they were sawn"
            );
        }

        string[] on =
        [
            .. pieced
                .Planks.SelectMany(p => p.Joints)
                .Select(j => j.Backing)
                .OfType<string>()
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];
        string joined =
            layer.Stock.Kind == JointKind.Scarf
                ? $"scarfs of {NumberText.Trimmed(layer.Stock.ScarfRatio, 1)}:1, {Mm(layer.JointMm)} long"
                : $"butts on {string.Join(", ", on)}";
        yield return new(
            Severity.Note,
            where,
            $"{NumberText.Count(pieced.Planks.Length, "plank")} a side {(pieced.Planks.Length == 1 ? "is" : "are")} longer than {Mm(layer.Stock.LongestMm)} and made of {pieced.Pieces} pieces, {Fewest(pieced)}, joined by {joined}"
        );
    }

    /// <summary>What of the program's own proposals is kept where not all can be.</summary>
    internal static Finding GaveWay(LayerCase layer, Relief relief, LengthUnit units)
    {
        bool lost = relief.Kept.Any(k => k is null);
        return new(
            lost ? Severity.Warning : Severity.Note,
            $"layer {layer.Layer.Spec.Name}",
            $"joints cannot keep all the distances that the program proposes ({JointRules.Proposal}); as much is kept as can be: {string.Join("; ", relief.Relaxed.Zip(relief.Kept).Select(r => $"{Rule(r.First, units)} asked, {(r.Second is { } kept ? Kept(kept, units) : "nothing")} kept"))}. Longer stock, or a rule of yours in [[joints.rule]], settles it otherwise"
        )
        {
            Rank = lost ? Rank.SawAfter : Rank.Know,
        };
    }

    /// <summary>How far the number of pieces is proved.</summary>
    public static string Fewest(JointedLayer pieced) =>
        pieced.Pieces == pieced.LeastPieces
            ? "the fewest on the places tried"
            : $"no fewer than {pieced.LeastPieces} is proved on the places tried";

    /// <summary>A rule in words: next plank 1.2 m (source).</summary>
    public static string Rule(JointRule rule, LengthUnit units) =>
        rule.What == JointRuleKind.SameBacking
            ? $"{Name(rule.What)}, {rule.Count} between"
            : $"{Name(rule.What)}, {LengthText.ForPaper(rule.DistanceMm ?? 0, units, rule.Told)}";

    private static string Advice(Relief relief, LengthUnit units) =>
        relief switch
        {
            { Relaxed: [] } =>
                "It is not the rules: name more backing, shorten `shortest`, or use longer stock",
            { Relaxed: [var one], Kept: [{ } to] } =>
                $"The first rule to relax: \"{Rule(one, units)}\" ({one.Source}); with {Kept(to, units)} the rest can be kept. Or use longer stock",
            { Relaxed: [var one] } =>
                $"The first rule to relax: \"{Rule(one, units)}\" ({one.Source}), of which nothing can be kept. Or use longer stock",
            _ =>
                $"No rule alone is the cause; these together give way least, the mildest first: {string.Join("; ", relief.Relaxed.Zip(relief.Kept).Select(r => $"\"{Rule(r.First, units)}\" to {(r.Second is { } kept ? Kept(kept, units) : "nothing")}"))}. Or use longer stock",
        };

    private static string Kept(JointRule to, LengthUnit units) =>
        to.Count is { } n
            ? NumberText.Trimmed(n, 0) + " between"
            : LengthText.ForPaper(to.DistanceMm ?? 0, units, RoundTo.Down);

    private static string Name(JointRuleKind what) =>
        what switch
        {
            JointRuleKind.NextPlank => "next plank",
            JointRuleKind.OneBetween => "one plank between",
            JointRuleKind.SameBacking => "same backing",
            JointRuleKind.JointsBelow => "joints below",
            _ => "seams below",
        };

    private static string NothingBehind(JointStock stock) =>
        stock.Kind == JointKind.Scarf ? "a scarf that long does not go across it from edge to edge"
        : stock.Cut == ButtCut.Square
            ? $"nothing behind it that carries a butt ({string.Join(", ", stock.On)}) is broad enough for one square across it; say cut = \"along the backing\", allow blocks, or name more in [[behind]]"
        : $"nothing behind it carries a butt ({string.Join(", ", stock.On)}); name more in [[behind]], or allow blocks";
}
