/** How the line's stations and the service itself are doing: one page, and the same as metrics. */
package evenpair.inspections.plant;
