using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>Cloth that no session wets out, and what waits for somebody to write down when it is on.</summary>
internal static class UnknownCloth
{
    /// <summary>Of what goes on a cloth that no session wets out and of which nobody wrote down when it was on: it would be planned as if nothing lay under it that has to cure, or to be washed and keyed.</summary>
    /// <param name="under">The stage before it.</param>
    /// <returns>Null where it goes on wood, or on cloth whose hour is known.</returns>
    public static Finding? Under(AmountPlanner amounts, int at, GlueStage? under) =>
        at > 0
        && amounts.Planked.Layers[at - 1] is ClothLayerPlan { Cloth.Name: var below }
        && !(under is { IsCloth: true, OnAt: not null } && under.Layer == below)
            ? Of(
                amounts.Spec,
                below,
                [
                    .. amounts.Planked.Job.Layers.Skip(at).Select(l => l.Name),
                    .. amounts.Spec.Finishes,
                ]
            )
            : null;

    /// <summary>What goes on a cloth that no session wets out.</summary>
    public static Finding Of(GlueSpec spec, string cloth, ImmutableArray<string> comeAfter)
    {
        string[] rows =
        [
            .. AmountPlanner
                .BothSides.Where(s => spec.Done.WettedAt(cloth, s) is null)
                .Select(s => $"{cloth} {s.ToString().ToLowerInvariant()}"),
        ];
        string after = string.Join(", ", comeAfter),
            row = rows.Length == 0
                ? ""
                : $"Write into {GlueProgress.UsualSource} when it is on: {string.Join(", ", rows)}";
        return new(
            Severity.Warning,
            Subject.OfLayer(cloth),
            rows.Length == 0
                ? $"it is on by {spec.Done.Source}, and the job has no [resin] that says when it has cured: {after} come after it and are not planned before that is known. Add [resin] as its data sheet has it"
                : $"it has no session, and nothing says when it is on and has cured: {after} come after it and are not planned before that is known. {row}{(spec.Resin is null ? ", and add [resin] as its data sheet has it" : "")}"
        )
        {
            Rank = Rank.Know,
        };
    }

    /// <summary>Coats over a cloth of which nothing says how much of it there is.</summary>
    public static Finding NoArea(string cloth, int coat, IEnumerable<Side> wanting) =>
        new(
            Severity.Warning,
            Subject.OfLayer(cloth),
            $"no [[sheathing]] says how much of it there is: coat {NumberText.Trimmed(coat, 0)} over it and what comes after has no session. Give it one, or write into {GlueProgress.UsualSource} when the coat is on: {string.Join(", ", wanting.Select(s => $"{cloth} coat {NumberText.Trimmed(coat, 0)} {s.ToString().ToLowerInvariant()}"))}"
        )
        {
            Rank = Rank.Know,
        };
}
