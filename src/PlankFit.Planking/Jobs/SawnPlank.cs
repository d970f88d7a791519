using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Jobs;

/// <summary>A plank as it was when it was sawn: its form stays what it was, whatever the lay-out does afterwards.</summary>
/// <param name="Revision">Of the inputs by which it was sawn.</param>
public sealed record SawnPlank(PlankId Id, string Revision, PlankForm Form)
{
    public Side Side => Id.Side;

    public int Layer => Id.Layer;

    public int Number => Id.Number;

    public PlankShape Shape => Form.Shape;

    /// <summary>The layer that it was sawn for; null in a record of before this was written down.</summary>
    public SawnLayer? SawnFor { get; init; }

    public static SawnPlank Of(Plank plank, PlankLayerSpec layer, string revision) =>
        new(plank.Id, revision, plank.Form)
        {
            SawnFor = new(layer.Name, layer.ThicknessMm, layer.Heads),
        };

    /// <summary>With the edges of its ends by the words that its panel has for them, which the record leaves out.</summary>
    public SawnPlank Named(Panel panel) =>
        panel.HasKeel
            ? this
            : this with
            {
                Form = Form with
                {
                    Ends = [.. Form.Ends.Select(e => e with { Word = panel.WordOf(e.At) })],
                },
            };

    /// <summary>The two ends of its forward or after seam, inboard first, in the starboard frame; null where it has no such edge.</summary>
    public (Vec3 Inboard, Vec3 Outboard)? SeamEnds(bool after)
    {
        ImmutableArray<Vec3> seam = after ? Shape.After.Seam : Shape.Forward.Seam;
        return seam.IsEmpty ? null
            : Side == Side.Port ? (seam[0].MirroredInY(), seam[^1].MirroredInY())
            : (seam[0], seam[^1]);
    }

    /// <summary>The plank of today's lay-out in the form that was sawn.</summary>
    public Plank In(Plank today) => today with { Form = Form, IsSawn = true, SawnFrom = Revision };
}

/// <summary>What a plank was sawn for: the name of its layer, its thickness, mm, and which way its planks headed.</summary>
public sealed record SawnLayer(string Name, double ThicknessMm, Heads Heads);
