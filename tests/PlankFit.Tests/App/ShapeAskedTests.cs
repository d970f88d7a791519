using PlankFit.App.Laying;
using PlankFit.Export.Solids;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App;

/// <summary>The shape in one file, where the job asks for it and nowhere else.</summary>
public sealed class ShapeAskedTests
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void TheShapeIsWrittenWhereItIsAskedFor(bool asked)
    {
        BottomPlan plan = DemoPlans.Of("tender");
        Assert.Equal(
            asked,
            LayFiles
                .Of(
                    plan with
                    {
                        Job = plan.Job with
                        {
                            Output = plan.Job.Output with { ShapeAsGlb = asked },
                        },
                    }
                )
                .Any(f => f.What == ShapeFile.Name)
        );
    }
}
