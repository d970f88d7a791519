using PlankFit.Export.Words;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Fastenings;

/// <summary>A layer's rule, and how its lengths come about, in sentences.</summary>
internal static class FasteningRuleWords
{
    public static string Of(FasteningRule rule, bool isFirstSkin, LengthUnit unit)
    {
        string Mm(double mm) => PlankWords.Small(mm, unit);
        string Least(double mm) => PlankWords.Small(mm, unit, RoundTo.Up);
        string keeps =
            $"at least {Least(rule.EdgeMm)} from seams, {Least(rule.EndMm)} from net ends, {Least(rule.JointMm)} from joints, {Least(rule.MarginMm)} inside the timber's edge, "
            + $"{Least(rule.OpenMm)} from places kept open"
            + (
                isFirstSkin
                    ? "."
                    : $", {Least(rule.MissMm)} from fastenings and {Least(rule.BelowMm)} from seams of the skin below."
            );
        string down = rule.PullDown is { } d
            ? $" Between timbers pull-down points every {Mm(d.SpacingMm)} along and {Mm(d.AcrossMm)} across."
            : "";
        string every =
            rule.Kind != FasteningKind.None
                ? $"No more than {PlankWords.Small(rule.SpacingMm, unit, RoundTo.Down)} apart along a timber, "
            : rule.VentMm is { } vent ? $"Vent holes every {Mm(vent)}, "
            : "Nothing is fastened; any hole ";
        return every + keeps + down;
    }

    /// <summary>"45 mm on stringer A: pad 9 + planking and cloth 19 + bite 17 (17 wanted), in timber 45 deep".</summary>
    public static string Of(ChosenLength l, LengthUnit unit)
    {
        string Mm(double mm) => PlankWords.Small(mm, unit);
        string depth = l.DepthMm is { } d
            ? $"{Mm(d)} deep"
            : "depth not given: see that no point comes through";
        return $"pad or strap {Mm(l.PadMm)} + planking and cloth {Mm(l.PassedMm)} + bite {(l.LengthMm is null ? "none" : Mm(l.BiteMm))}"
            + $" ({Mm(l.WantedBiteMm)} wanted), into wood {depth}";
    }
}
