using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Jobs;

/// <summary>[hull]: which table, which of its lines, which way and to which face.</summary>
internal sealed record HullBinding(
    string? OffsetsPath,
    Place OffsetsAt,
    bool Forward,
    HullSpec? Spec,
    ImmutableArray<NamedLine> Lines
)
{
    public static HullBinding Bind(TableReader hull)
    {
        string? path = hull.Text("offsets", "the table's file, such as \"offsets.csv\"");
        bool forward =
            hull.Choice("positions", [("aft", false), ("forward", true)], required: false) ?? false;
        OffsetsAreTo? to = hull.Choice(
            "offsets-are-to",
            [("outside", OffsetsAreTo.Outside), ("inside", OffsetsAreTo.Inside)],
            required: true
        );
        KeelSide side =
            hull.Choice(
                "keel-side",
                [("plumb", KeelSide.Plumb), ("square to plank", KeelSide.SquareToPlank)],
                required: false
            ) ?? KeelSide.Plumb;
        string? keel = hull.Text(
            "keel",
            "the name of the table's line that the planks' inner ends meet"
        );
        string? chine = hull.Text("chine", "the name of the table's line at the chine");
        ImmutableArray<(string Text, Place At)> between = hull.Texts("between");
        hull.Close();

        var lines = ImmutableArray.CreateBuilder<NamedLine>();
        if (keel is not null)
        {
            lines.Add(new("keel", keel, hull.PlaceOf("keel")));
        }

        lines.AddRange(between.Select(b => new NamedLine("between", b.Text, b.At)));
        if (chine is not null)
        {
            lines.Add(new("chine", chine, hull.PlaceOf("chine")));
        }

        foreach (NamedLine again in lines.Where((l, i) => lines.Take(i).Any(m => m.Name == l.Name)))
        {
            hull.Faults.Error(
                again.At,
                $"[hull] {again.Key}: {Quoted.Of(again.Name)} is named twice; keel, chine and each line between are different lines"
            );
        }

        HullSpec? spec =
            keel is null || chine is null || to is null
                ? null
                : new(keel, chine, [.. between.Select(b => b.Text)], to.Value, side);
        return new(path, hull.PlaceOf("offsets"), forward, spec, lines.ToImmutable());
    }
}
