using PlankFit.Export.Joints;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Summary;

/// <summary>Rules that shape the work and of which a job need not say a word: how ends are left, and what joints keep.</summary>
internal static class WhatShapes
{
    private static readonly PanelEdge[] Edges =
    [
        PanelEdge.Lower,
        PanelEdge.Upper,
        PanelEdge.Transom,
        PanelEdge.Stem,
    ];

    public static IEnumerable<string> Lines(BottomPlan plan)
    {
        LengthUnit unit = plan.Job.Units;
        foreach (BottomPlan panel in plan.Panels.Where(p => p.PlankLayers.Any()))
        {
            yield return Ends(panel, unit);
        }

        if (plan.Job.Joints is { } spec)
        {
            foreach (
                JointedLayer jointed in plan.Joints.Layers.Where(l => l.Side == Side.Starboard)
            )
            {
                yield return Joints(plan, spec, jointed);
            }

            if (spec.SwitchedOff.Any())
            {
                yield return $"Rules of joints that this job switches off: {string.Join(", ", spec.SwitchedOff.Select(r => JointWords.Of(r.What)))}.";
            }
        }
    }

    private static string Joints(BottomPlan plan, JointSpec spec, JointedLayer jointed)
    {
        int usual = jointed.Rules.Count(r => !spec.Rules.Contains(r));
        Skin skin = spec.SkinOf(plan.PlankLayers.Count());
        string come =
            $"come with the program for {JointWords.Of(skin)}"
            + (skin == Skin.GluedLayers ? $" ({JointRules.Proposal})" : "");
        string whose =
            usual == 0 ? "no rules but the job's own"
            : usual == jointed.Rules.Length
                ? $"the rules that {come}; their sources stand with the joints"
            : $"{usual} of them {come}; their sources stand with the joints";
        return $"Joints of layer {jointed.Layer} keep {string.Join("; ", jointed.Rules.Select(r => JointFindings.Rule(r, plan.Job.Units)))}: {whose}.";
    }

    private static string Ends(BottomPlan panel, LengthUnit unit)
    {
        EndRules ends = panel.Job.Ends;
        Panel of = panel.Job.Hull.Panel;
        bool usual =
            (ends with { Zones = [], RunOut = null })
            == (of.HasKeel ? EndRules.Default : EndRules.LeftLong);
        IEnumerable<string> said = Edges
            .GroupBy(e => Rule(ends, e))
            .Select(g => $"{Cut(g.Key, unit)} at {string.Join(", ", g.Select(of.WordOf))}");
        return $"Ends of the {of.Name}: {string.Join("; ", said)}{(ends.Zones.IsEmpty ? "" : ", where no [[ends.zone]] says otherwise")}{(usual ? "; as the program has it where [ends] says nothing" : "")}.";
    }

    private static EndRule Rule(EndRules ends, PanelEdge edge) =>
        edge switch
        {
            PanelEdge.Lower => ends.Lower,
            PanelEdge.Upper => ends.Upper,
            PanelEdge.Transom => ends.Transom,
            _ => ends.Stem,
        };

    private static string Cut(EndRule rule, LengthUnit unit) =>
        rule.Cut == EndCut.LeftLong ? $"left long by {PlankWords.Small(rule.ByMm, unit)}"
        : rule.AllowanceMm is { } allowance
            ? $"fit, with {PlankWords.Small(allowance, unit)} to scribe away"
        : "fit";
}
