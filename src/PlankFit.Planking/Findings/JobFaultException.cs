namespace PlankFit.Planking.Findings;

/// <summary>The job cannot be planned as it stands: where, and what to do.</summary>
public sealed class JobFaultException(Subject about, string message) : Exception(message)
{
    public Subject About => about;

    /// <summary>It is the record of what is sawn that is at fault, and not the job.</summary>
    public bool IsOfTheRecord { get; init; }

    public Finding Finding => new(Severity.Error, about, Message);
}
