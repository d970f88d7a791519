using PlankFit.Planking.Units;

namespace PlankFit.Planking.Findings;

/// <summary>The job cannot be planned as it stands: where, and what to do.</summary>
/// <param name="told">The message, its lengths in the units asked for: where it is thrown nobody knows those of the job.</param>
public sealed class JobFaultException(Subject about, Func<LengthUnit, string> told)
    : Exception(told(LengthUnit.Millimetre))
{
    /// <summary>One without lengths.</summary>
    public JobFaultException(Subject about, string message)
        : this(about, _ => message) { }

    public Subject About => about;

    /// <summary>It is the record of what is sawn that is at fault, and not the job.</summary>
    public bool IsOfTheRecord { get; init; }

    public string Told(LengthUnit unit) => told(unit);

    public Finding Finding(LengthUnit unit) => new(Severity.Error, about, told(unit));
}
