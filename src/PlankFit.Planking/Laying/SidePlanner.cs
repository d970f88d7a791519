using System.Runtime.ExceptionServices;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Laying;

/// <summary>Counts layers as they are laid, for whoever waits.</summary>
internal sealed class LayerCount(IProgress<PlanProgress>? progress, int atFirst)
{
    private readonly Lock one = new();
    private int whole = atFirst,
        done;

    /// <summary>There turn out to be more layers to lay.</summary>
    public void More(int layers) => whole += layers;

    /// <summary>Layers may be laid side by side, and are counted one by one.</summary>
    public void Begin(string layer)
    {
        lock (one)
        {
            progress?.Report(
                new($"laying layer {done + 1} of {whole}, {layer}", (double)done / whole)
            );
            done++;
        }
    }
}

/// <summary>All layers of one side, in the starboard frame: port is laid as its own mirror image.</summary>
internal static class SidePlanner
{
    /// <summary>A face may be no nearer to its centre of curvature than this part of the radius.</summary>
    private const double LeastRoom = 0.2;

    /// <param name="before">A layer that was laid by the same before is taken over.</param>
    public static IReadOnlyList<LaidLayer> Lay(
        SideGround ground,
        IReadOnlyList<LaidLayer>? asDrawn,
        LayWorkings? before,
        LayerCount counter,
        CancellationToken stop
    )
    {
        StackedLayer[] layers = [.. ground.Stack.Layers.Where(l => l.Spec is PlankLayerSpec)];
        var laid = new LaidLayer[layers.Length];
        var thrown = new ExceptionDispatchInfo?[layers.Length];

        // Layers of one diagonal lie by the one below; the other diagonal's have nothing to do with them.
        int[][] diagonals =
        [
            .. Enumerable
                .Range(0, layers.Length)
                .GroupBy(i => ((PlankLayerSpec)layers[i].Spec).Heads)
                .Select(g => g.ToArray()),
        ];
        Parallel.ForEach(
            diagonals,
            diagonal =>
            {
                LaidLayer? below = null;
                foreach (int i in diagonal)
                {
                    try
                    {
                        stop.ThrowIfCancellationRequested();
                        counter.Begin(layers[i].Spec.Name);
                        var inputs = LayerInputs.Of(ground, layers[i], i + 1, below, asDrawn?[i]);
                        laid[i] = below =
                            before?.Layers.FirstOrDefault(l => inputs.AreThose(l.From))
                            ?? LayerPlanner.Lay(inputs, stop);
                    }
                    catch (Exception e)
                    {
                        thrown[i] = ExceptionDispatchInfo.Capture(e);
                        return;
                    }
                }
            }
        );

        // Of several faults the innermost layer's is told, whichever was met first.
        Array.Find(thrown, t => t is not null)?.Throw();
        return laid;
    }

    /// <summary>Why planks of this stock have no room between keel and chine; null where they have.</summary>
    public static Finding? TooWide(
        LoftedSurface surface,
        PlankLayerSpec spec,
        Panel panel,
        LengthUnit unit
    ) =>
        LongestGirth(surface) is var longest && spec.WidthMm >= longest
            ? new(
                Severity.Error,
                Subject.OfLayer(spec.Name) with
                {
                    Key = "layer.width",
                },
                $"the stock, width = {LengthText.ForPaper(spec.WidthMm, unit)}, is wider than the {panel.Name}, which is at most {LengthText.ForPaper(longest, unit)} from {panel.WordOf(PanelEdge.Lower)} to {panel.WordOf(PanelEdge.Upper)}"
            )
            : null;

    private static double LongestGirth(LoftedSurface surface) =>
        Enumerable
            .Range(0, 41)
            .Select(i => surface.UFrom + ((surface.UTo - surface.UFrom) * i / 40))
            .Max(u => surface.At(u, 0).P.ChordTo(surface.At(u, surface.UpperV(u)).P));

    /// <summary>A face laid inside the bend of the surface must stay well short of its centre of curvature; where one does not, null where both do.</summary>
    public static Finding? TooThick(
        LoftedSurface surface,
        StackedLayer layer,
        Panel panel,
        LengthUnit unit
    )
    {
        for (int i = 0; i <= 60; i++)
        {
            double u = surface.UFrom + ((surface.UTo - surface.UFrom) * Math.Max(i, 0.2) / 60);
            for (int j = 0; j <= 6; j++)
            {
                SurfacePoint p = surface.At(u, surface.UpperV(u) * j / 6);
                (double k1, double k2) = p.PrincipalCurvatures;
                foreach (double z in new[] { layer.InnerMm, layer.OuterMm })
                {
                    double room = 1 - (z * (z > 0 ? k1 : k2));
                    if (!(room > LeastRoom))
                    {
                        return new(
                            Severity.Error,
                            Subject.OfLayer(layer.Spec.Name) with
                            {
                                Key = "layer.thickness",
                            },
                            $"the layer is too thick for its curvature: {LengthText.ForPaper(Math.Abs(z), unit)} from the table's surface, where the {panel.Name} at x = {LengthText.ForPaper(p.P.X, unit)}, y = {LengthText.ForPaper(p.P.Y, unit)} has a radius of {LengthText.ForPaper(1 / Math.Abs(z > 0 ? k1 : k2), unit)}; look at the offsets there, or make the stack thinner"
                        );
                    }
                }
            }
        }

        return null;
    }
}
