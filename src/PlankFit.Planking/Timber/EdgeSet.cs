using PlankFit.Planking.Bending;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Timber;

/// <summary>
/// What it costs to pull straight stock sideways to a seam that is not straight when laid flat: the plank is bent about its hard way. With f its
/// round or hollow over a length L the curvature is 8 f/L² and the strain at the edges 4 w f/L².
/// </summary>
/// <param name="Strain">At the stock's edges, along the grain.</param>
/// <param name="MayBeForced">Whether the whole strain stays within what a cold bend is trusted with and below that at which the edge lifts; null where no wood is named.</param>
/// <param name="MostMm">The greatest round or hollow that may still be pulled in at that edge; null where no wood is named.</param>
public sealed record EdgeSet(double Strain, bool? MayBeForced, double? MostMm)
{
    public static double Curvature(double outMm, double lengthMm) =>
        8 * outMm / (lengthMm * lengthMm);

    public static double StrainOf(double outMm, double widthMm, double lengthMm) =>
        Curvature(outMm, lengthMm) * widthMm / 2;

    /// <summary>Above this the pressed edge lifts off the hull: 0.4 (t/(w/2))², the free edge of a plate, wood taken as alike all ways (an estimate).</summary>
    public static double LiftStrain(double thicknessMm, double widthMm) =>
        0.4 * Math.Pow(thicknessMm / (widthMm / 2), 2);

    /// <summary>For the worse of a plank's two edges; null where it has none.</summary>
    public static EdgeSet? Of(Plank plank, double thicknessMm, double widthMm, BendJudge judge)
    {
        EdgeSet? worst = null;
        foreach (PlankEdge edge in new[] { plank.ForwardEdge, plank.AfterEdge })
        {
            if (!edge.Exists || edge.SeamLengthMm <= 0)
            {
                continue;
            }

            double length = edge.SeamLengthMm,
                strain = StrainOf(Math.Max(edge.RoundMm, edge.HollowMm), widthMm, length);
            if (worst is null || strain > worst.Strain)
            {
                double lift = LiftStrain(thicknessMm, widthMm);
                double? room = judge.ColdStrain is { } cold
                    ? Math.Min(Math.Max(0, cold - (plank.Bend.GrainStrainPercent / 100)), lift)
                    : null;
                worst = new(strain, strain <= room, room * length * length / (4 * widthMm));
            }
        }

        return worst;
    }
}
