using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Planking;

/// <summary>Every chord of every outline, not some of them, on a bottom whose bend changes fast along the planks' edges.</summary>
public sealed class OutlineChordTests
{
    /// <summary>The launch with one chine height 30 mm up, and 30 down: the formula's 0.002 mm is kept where the bend is sharpest too.</summary>
    [Theory]
    [InlineData(7, 30)]
    [InlineData(4, -30)]
    public void ChordsKeepToTheSurfaceBesideABumpInTheChine(int station, double byMm)
    {
        Job job = DemoPlans.Of("survey-launch").Job;
        BottomPlan plan = WholeBottomTests.Planned(
            job with
            {
                Layers = [job.Layers.OfType<PlankLayerSpec>().First()],
                Keel = KeelSpec.None,
                Joints = null,
                Fastenings = null,
                Framing = [],
                SettingUp = null,
                Timber = null,
                Offsets = new(
                    job.Offsets.Stations,
                    [
                        .. job.Offsets.Lines.Select(l =>
                            l.Name == job.Hull.Panel.Upper
                                ? l with
                                {
                                    HeightsMm = l.HeightsMm.SetItem(
                                        station,
                                        l.HeightsMm[station] + byMm
                                    ),
                                }
                                : l
                        ),
                    ]
                ),
            }
        );
        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            Assert.Empty(layer.Starboard.SelectMany(p => Off(layer, p)).Take(5));
        }
    }

    private static IEnumerable<string> Off(PlankLayerPlan layer, Plank plank)
    {
        for (int i = 0; i < plank.Outline.Length; i++)
        {
            int next = (i + 1) % plank.Outline.Length;
            Assert.True(
                ClosestPoint.TryFind(
                    layer.Surface,
                    0.5 * (plank.Outline[i] + plank.Outline[next]),
                    plank.Map.On(0.5 * (plank.FlatNet[i] + plank.FlatNet[next])),
                    1e-7,
                    out ClosestPoint.Result foot
                )
            );
            if (Math.Abs(foot.HeightMm) > 0.002)
            {
                yield return FormattableString.Invariant(
                    $"{plank.Id}: {foot.HeightMm:0.000000} after point {i} of {plank.Outline.Length}, u {foot.Uv.U:0.0}"
                );
            }
        }
    }
}
