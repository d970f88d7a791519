using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Panels;

/// <summary>[hull]: which table, which of its lines, which way and to which face.</summary>
internal sealed record HullBinding(
    string? OffsetsPath,
    Place OffsetsAt,
    bool Forward,
    HullSpec? Spec,
    ImmutableArray<NamedLine> Lines
)
{
    /// <summary>Cells of the table that are right as they are written.</summary>
    public ImmutableArray<(string Cell, Place At)> AsWritten { get; init; } = [];

    public static HullBinding Bind(TableReader hull)
    {
        string? path = hull.Text(HullKeys.Offsets);
        bool forward = hull.ChoiceOrDefault(HullKeys.PositionsForward);
        OffsetsAreTo? to = hull.Choice(HullKeys.OffsetsTo);
        KeelSide side = hull.ChoiceOrDefault(HullKeys.Side);
        string? keel = hull.Text(HullKeys.Keel);
        string? chine = hull.Text(HullKeys.Chine);
        ImmutableArray<(string Text, Place At)> between = hull.Texts(HullKeys.Between);
        ImmutableArray<(string Text, Place At)> asWritten = hull.Texts(HullKeys.AsWritten);
        hull.Close();

        ImmutableArray<NamedLine>.Builder lines = ImmutableArray.CreateBuilder<NamedLine>();
        if (keel is not null)
        {
            lines.Add(new("keel", keel, hull.PlaceOf(HullKeys.Keel)));
        }

        lines.AddRange(between.Select(b => new NamedLine("between", b.Text, b.At)));
        if (chine is not null)
        {
            lines.Add(new("chine", chine, hull.PlaceOf(HullKeys.Chine)));
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
        return new(path, hull.PlaceOf(HullKeys.Offsets), forward, spec, lines.ToImmutable())
        {
            AsWritten = asWritten,
        };
    }
}
