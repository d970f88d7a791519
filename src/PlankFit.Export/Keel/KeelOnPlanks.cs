using PlankFit.Draughting.Bodies;
using PlankFit.Export.Shown;
using PlankFit.Planking.KeelCheck;

namespace PlankFit.Export.Keel;

/// <summary>The keel's layers beside the planks in the whole shape.</summary>
internal sealed class KeelOnPlanks(KeelPlan keel) : IOnPlanks
{
    public IEnumerable<Body> Bodies() => KeelBodies.Of(keel);
}
