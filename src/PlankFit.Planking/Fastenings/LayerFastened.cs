using System.Collections.Immutable;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Fastenings;

/// <summary>The fastenings of one layer and side, with all that they were set by.</summary>
/// <param name="Below">The fastenings of the layers below; null for the first.</param>
internal sealed record LayerFastened(
    LayerGround Ground,
    LayerFastenings Rule,
    LayerFastened? Below,
    ImmutableArray<PlankFastenings> Planks,
    ImmutableArray<TimberGap> Gaps
)
{
    /// <summary>Places of the fastenings of this layer and all below, from the first on, by the parameters that all faces of the stack share.</summary>
    public IEnumerable<Uv> Places()
    {
        var places = new Uv[Planks.Length][];
        Parallel.For(
            0,
            places.Length,
            i =>
            {
                PlankMap map = Ground.Planks[i].Framed.Plank.Map;
                places[i] = [.. Planks[i].Points.Select(f => map.On(f.At))];
            }
        );
        return (Below?.Places() ?? []).Concat(places.SelectMany(p => p));
    }

    /// <summary>Starboard's to port, where that lies on the mirror image of the same (<see cref="TwinGrounds"/>).</summary>
    public LayerFastened Mirrored(LayerGround port, LayerFastened? below) =>
        new(
            port,
            Rule,
            below,
            [
                .. Planks.Select(p => new PlankFastenings(
                    p.PlankId.Twin,
                    [.. p.Points.Select(f => f with { At = new(f.At.X, -f.At.Y) })],
                    [.. p.Short.Select(s => s with { Hindered = s.Hindered.ToPort() })]
                )),
            ],
            [
                .. Gaps.Select(g =>
                    g with
                    {
                        Side = Side.Port,
                        From = g.From?.Twin,
                        To = g.To?.Twin,
                        Hindered = g.Hindered.ToPort(),
                    }
                ),
            ]
        );

    /// <summary>Whether it was set by these: a rule equal by value, on the very same.</summary>
    public bool IsBy(LayerGround ground, LayerFastenings rule, LayerFastened? below) =>
        ReferenceEquals(Ground, ground)
        && ReferenceEquals(Below, below)
        && SameValue.Are(Rule, rule);
}
