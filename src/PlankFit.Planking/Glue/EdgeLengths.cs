using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Glue;

/// <summary>How long the edges of a layer's region are on its middle, one side, mm.</summary>
/// <param name="Stem">0 where keel and chine meet in a point.</param>
internal readonly record struct EdgeLengths(double Stem, double Chine, double Transom, double Keel)
{
    /// <summary>The outline goes round by edges of so many points each.</summary>
    private const int PointsAnEdge = 120;

    public static EdgeLengths Of(PlankLayerPlan layer)
    {
        int edges = layer.Outline.Length / PointsAnEdge;
        double[] lengths = [.. Enumerable.Range(0, edges).Select(Edge)];
        return edges == 4
            ? new(lengths[0], lengths[1], lengths[2], lengths[3])
            : new(0, lengths[0], lengths[1], lengths[2]);

        double Edge(int edge)
        {
            double sum = 0;
            for (int i = 0; i < PointsAnEdge; i++)
            {
                Vec3 a = layer.Outline[(edge * PointsAnEdge) + i],
                    b = layer.Outline[((edge * PointsAnEdge) + i + 1) % layer.Outline.Length];
                sum += a.ChordTo(b);
            }

            return sum;
        }
    }
}
